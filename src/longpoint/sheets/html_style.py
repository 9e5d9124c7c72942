"""How the HTML sheets look on paper, on a screen and in the hand."""

from typing import Final

STYLE: Final = """
:root { color-scheme: light dark; --ink: #16130f; --paper: #fff; --faint: #56524c;
  --line: #b9b2a6; --band: #ece7dd; --stop: #9b1c12; --look: #8a5a00; }
@media screen and (prefers-color-scheme: dark) { :root { --ink: #f2ede4; --paper: #1b1a18;
  --faint: #b8b1a5; --line: #5b564e; --band: #2c2a26; --stop: #ff9b8f; --look: #f0c060; } }
@media (prefers-contrast: more) { :root { --faint: var(--ink); --line: var(--ink); } }
* { box-sizing: border-box; }
html { -webkit-text-size-adjust: 100%; }
body { margin: 0 auto; padding: 1.2rem; max-width: 62rem; background: var(--paper);
  color: var(--ink); font: 16px/1.4 'Noto Sans', 'Segoe UI', 'Helvetica Neue', Arial, sans-serif;
  font-variant-numeric: tabular-nums; overflow-wrap: break-word; }
header { border-bottom: 4px solid var(--ink); padding-bottom: .5rem; }
header p { margin: .15rem 0; }
.house { font-size: 1rem; font-weight: 700; }
h1 { font-size: 2rem; line-height: 1.1; margin: .1rem 0 .3rem; }
h2 { font-size: 1.3rem; margin: 1.6rem 0 .5rem; padding-left: .5rem;
  border-left: .5rem solid var(--ink); break-after: avoid; }
h3 { font-size: 1rem; margin: 1rem 0 .2rem; break-after: avoid; }
.by { color: var(--faint); font-size: .9rem; display: flex; flex-wrap: wrap; gap: .2rem 1.4rem; }
.hand { display: inline-block; min-width: 7rem; border-bottom: 1.5px solid currentColor; }
table { border-collapse: collapse; width: 100%; margin: .4rem 0 .8rem; }
caption { text-align: left; font-weight: 600; padding: .2rem 0 .3rem; }
th { text-align: left; font-size: .8rem; color: var(--faint); border-bottom: 2px solid var(--ink);
  vertical-align: bottom; padding: .2rem .4rem; }
td, .note, h1, h2, h3, header p { overflow-wrap: break-word; }
.one { white-space: nowrap; }
.close td { padding: .15rem .4rem; }
td { border-bottom: 1px solid var(--line); padding: .35rem .4rem; vertical-align: middle; }
.n { text-align: right; }
.group th { background: var(--band); color: var(--ink); font-size: .95rem; padding: .35rem .4rem;
  border-bottom: 1px solid var(--ink); }
tr { break-inside: avoid; }
tr:has(+ .under) { break-after: avoid; } tr:has(+ .under) > td { border-bottom: 0; }
.under td { padding-top: 0; font-size: .8rem; color: var(--faint); text-align: right; }
.under .step { margin: 0 0 .15rem; font-size: .95rem; color: var(--ink); text-align: left; }
.told .under td { font-size: .9rem; color: var(--ink); text-align: left; }
.main { display: block; font-weight: 600; }
.key .main, td.key { font-size: 1.75rem; font-weight: 700; line-height: 1.1; }
.small { display: block; font-size: .8rem; font-weight: 400; line-height: 1.3;
  color: var(--faint); }
.behind { font-size: .85rem; font-weight: 600; color: var(--faint); white-space: nowrap; }
.pair { display: flex; align-items: center; gap: .5rem; }
.pair.last { justify-content: flex-end; text-align: right; }
.tick { display: inline-block; width: 1.25rem; height: 1.25rem; border: 2px solid currentColor;
  border-radius: 2px; vertical-align: middle; margin-right: .35rem; }
.line { display: inline-block; width: 100%; min-width: 4rem; height: 1.6rem;
  border-bottom: 1.5px solid currentColor; }
figure { margin: .4rem 0; }
figure svg { width: 100%; height: auto; }
svg { background: #fff; border-radius: 2px; }
td svg, p svg { flex: none; background: none; }
@media screen and (prefers-color-scheme: dark) { td svg, p svg { background: #f7f3ea; } }
figcaption, .said { font-size: .85rem; color: var(--faint); }
.note { border: 1.5px solid var(--line); border-left: .6rem double var(--line);
  padding: .4rem .7rem; margin: .5rem 0; break-inside: avoid; }
.note strong { display: block; } .note .small { margin-top: .15rem; }
.note.stop { border: 3px solid var(--stop); border-left: 1rem solid var(--stop); }
.note.warning { border: 2px dashed var(--look); border-left: .8rem solid var(--look); }
.note.stop strong { color: var(--stop); } .note.warning strong { color: var(--look); }
.ask { display: flex; align-items: end; gap: .5rem; margin-top: .4rem; font-size: .9rem; }
.ask .line { flex: 1; width: auto; }
.beside { display: grid; grid-template-columns: var(--split); gap: 1.2rem; align-items: start; }
.together { break-inside: avoid; }
footer { border-top: 2px solid var(--ink); margin-top: 2rem; font-size: .9rem; }
footer ul { padding-left: 1.2rem; margin: .4rem 0; } footer li { margin: .25rem 0; }
.void { position: fixed; inset: 0; pointer-events: none; z-index: 9;
  background: repeating-linear-gradient(135deg, rgb(90 90 90 / .38) 0 10mm, transparent 10mm 42mm);
  print-color-adjust: exact; -webkit-print-color-adjust: exact; }
.voided { position: fixed; inset: auto 0 38vh 0; z-index: 10; text-align: center;
  pointer-events: none; }
.voided b { display: inline-block; background: #fff; color: #000; border: 5px solid #000;
  padding: .4rem 1rem; font-size: 2rem; line-height: 1.15; }
@media screen and (max-width: 40rem) {
  body { padding: .7rem; font-size: 17px; }
  .beside { grid-template-columns: minmax(0, 1fr); gap: .4rem; }
  figure.wide { overflow-x: auto; } figure.wide svg { min-width: 44rem; }
  table.cards, table.cards tbody, table.cards caption { display: block; width: 100%; }
  table.cards thead { position: absolute; width: 1px; height: 1px; overflow: hidden;
    clip-path: inset(50%); }
  table.cards tr { display: grid; grid-template-columns: repeat(6, minmax(0, 1fr));
    grid-auto-flow: dense; column-gap: .6rem; border: 2px solid var(--ink); border-radius: 4px;
    margin: 0 0 .8rem; padding: .3rem .6rem; align-items: center; }
  table.cards tr:has(+ .under) { border-bottom: 0; margin-bottom: 0; border-radius: 4px 4px 0 0; }
  table.cards tr.under { border-top: 0; border-radius: 0 0 4px 4px; }
  table.cards .under td { text-align: left; } table.cards .under td::before { content: none; }
  table.cards tr.group { display: block; border: 0; padding: 0; margin-top: 1.2rem; }
  table.cards .group th { display: block; }
  table.cards td { grid-column: span 6; border: 0; text-align: left; padding: .3rem 0; }
  table.cards td::before { content: attr(data-title); display: block; font-size: .75rem;
    color: var(--faint); font-weight: 400; line-height: 1.2; }
  table.cards td.n, table.cards td.write, table.cards td.end { grid-column: span 3; }
  table.cards td.no { grid-column: span 2; } table.cards td.no + td { grid-column: span 4; }
  table.cards td.no::before, table.cards td.no + td::before { content: none; }
  table.cards td.no .main { font-size: 1.5rem; } table.cards td.no + td .main { font-size: 1.2rem; }
  table.cards td.key { border-block: 1px solid var(--line); }
  table.cards td.end .main { font-size: 1.15rem; }
  table.cards .pair { justify-content: space-between; }
  table.cards.told .pair { justify-content: flex-start; }
  table.cards.told td.end { grid-column: span 6; }
  .key .main, td.key { font-size: 1.5rem; }
  table.cards .key .main, table.cards td.key { font-size: 2.5rem; }
  th, td { padding-inline: .25rem; }
  table:not(.cards) col { width: auto !important; }
}
@media print {
  @page { margin: 17mm 12mm 15mm;
    @top-left { font: 700 8pt 'Noto Sans', Arial, sans-serif; }
    @top-right { font: 700 8pt 'Noto Sans', Arial, sans-serif; }
    @bottom-left { font: 8pt 'Noto Sans', Arial, sans-serif; }
    @bottom-right { font: 8pt 'Noto Sans', Arial, sans-serif; } }
  :root { color-scheme: light; }
  body { padding: 0; max-width: none; font-size: 9.5pt; line-height: 1.3; }
  p { margin: 1.5mm 0; }
  header { border-bottom-width: 2pt; padding-bottom: 1mm; }
  h1 { font-size: 20pt; } h2 { font-size: 12.5pt; margin: 5mm 0 2mm; border-left-width: 2.2mm; }
  th { font-size: 7.8pt; padding: .6mm 1mm; } td { padding: .9mm 1mm; }
  .group th { font-size: 9.5pt; padding: .8mm 1mm; }
  .key .main, td.key { font-size: 18pt; line-height: 1; }
  .behind { font-size: 8.5pt; }
  .small { font-size: 7.8pt; line-height: 1.25; } .under td { font-size: 7.8pt; padding-top: 0; }
  .under .step { margin: 0 0 .15rem; font-size: .95rem; color: var(--ink); text-align: left; }
.told .under td { font-size: 8.5pt; }
  .close td { padding: .5mm 1mm; }
  .tick { width: 4mm; height: 4mm; border-width: .9pt; }
  .line { height: 5mm; border-bottom-width: .7pt; }
  figure { margin: 1mm 0; } figcaption, footer, .said { font-size: 8pt; }
  thead { display: table-header-group; }
  footer { break-inside: avoid; }
  * { print-color-adjust: exact; -webkit-print-color-adjust: exact; }
}
"""
