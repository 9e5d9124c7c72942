"""The keys of the rates file."""

from typing import Final

from longpoint.pricing.hours import LESS, MORE
from longpoint.pricing.rates import ASSUMED_PAY_DAYS, ASSUMED_SURE, ASSUMED_VALID_DAYS, Timber
from longpoint.pricing.take_off import Limits
from longpoint.pricing.tax import TaxRounding, TaxShown
from longpoint.pricing.work import START_RATES, WorkKind
from longpoint.speech.said import say
from longpoint.survey.house_file.keys import Key, Kind, Table

RATES_FORMAT: Final = "longpoint-rates/1"
DEAREST: Final = 1e9
"""No hour and no stick costs more, in any currency; ours."""
MOST_HOURS: Final = 1000.0

_MEANT: Final = {
    WorkKind.SET_UP: say(
        "Getting there, bench and saw set up and cleared away, for the whole job."
    ),
    WorkKind.WINDOW_FOUR_SIDES: say("A window trimmed on four sides, up to 5 ft a side."),
    WorkKind.WINDOW_THREE_SIDES: say("A window trimmed on three sides, or with board and apron."),
    WorkKind.DOOR_FACE: say("One face of a door or cased opening."),
    WorkKind.LONG_SIDE: say("Each side of a window over 5 ft, on top."),
    WorkKind.ODD_CORNER: say("Each corner out of square, on top."),
    WorkKind.ARCH: say("An arched head, on top."),
    WorkKind.RESET_REVEAL: say("A reveal taken loose, packed and fixed again."),
    WorkKind.PACK_CORNER: say("A corner that stands proud or shy, packed or relieved."),
    WorkKind.WINDOW_BOARD: say("A window board cut in and fixed."),
    WorkKind.SKIRTING: say("Skirting, by the metre or foot."),
    WorkKind.INTERNAL_CORNER: say("An internal corner of skirting, scribed."),
    WorkKind.EXTERNAL_CORNER: say("An external corner of skirting, mitred."),
    WorkKind.FLOOR_SCRIBE: say("A board scribed to the floor, by the metre or foot."),
    WorkKind.CORNICE: say("Cornice, by the metre or foot."),
    WorkKind.HANDRAIL: say("Handrail, by the metre or foot."),
    WorkKind.SHELF: say("Shelving, by the metre or foot."),
    WorkKind.OTHER_TRIM: say("Linings, stops, rails, beads and panelling, by the metre or foot."),
    WorkKind.PIECE: say("Each piece, for a crew that prices by the piece."),
    WorkKind.JOINT: say("Each joint, for a crew that prices by the joint."),
}


def _hours(kind: WorkKind) -> Key:
    start = START_RATES.get(kind)
    left_out = say("not priced, and the sheet says so")
    if kind in (WorkKind.PIECE, WorkKind.JOINT):
        left_out = say("not priced: the kinds above hold it")
    if start is not None:
        three = start.hours
        by = say(" by the metre") if kind.is_running else ""
        left_out = say(
            "{normalize:f}, {normalize_2:f}, {normalize_3:f}{by}: {source}",
            normalize=three.least.normalize(),
            normalize_2=three.likely.normalize(),
            normalize_3=three.most.normalize(),
            by=by,
            source=start.source,
        )
    return Key(
        name=kind.value,
        kind=Kind.LEAST_LIKELY_MOST,
        meaning=_MEANT[kind],
        example=[0.4, 0.5, 0.8],
        left_out=left_out,
        high=MOST_HOURS,
        unit="hours",
    )


HOURS: Final = Table(title=say("the hours"), keys=tuple(_hours(kind) for kind in WorkKind))

TAX: Final = Table(
    title=say("the tax"),
    keys=(
        Key(
            name="name",
            kind=Kind.TEXT,
            meaning=say("What it is called."),
            example="VAT",
            required=True,
        ),
        Key(
            name="percent",
            kind=Kind.PRICE,
            meaning=say("Its rate, in percent of the price without it; never looked up."),
            example=20,
            required=True,
            high=100.0,
        ),
        Key(
            name="shown",
            kind=Kind.CHOICE,
            meaning=say("Added below the rows, or included in each of them."),
            example="added",
            choices=tuple(each.value for each in TaxShown),
            left_out="added",
        ),
        Key(
            name="rounding",
            kind=Kind.CHOICE,
            meaning=say("Rounded once on the total, or on each line."),
            example="total",
            choices=tuple(each.value for each in TaxRounding),
            left_out="total",
        ),
        Key(
            name="number",
            kind=Kind.TEXT,
            meaning=say("The crew's number for it, printed on quote and invoice."),
            example=say("NOT A REAL NUMBER"),
            left_out=say("not printed"),
        ),
    ),
)

LIMITS: Final = Table(
    title=say("the limits"),
    keys=(
        Key(
            name="odd_corner",
            kind=Kind.ANGLE,
            meaning=say("A corner so many degrees off square is priced as odd."),
            example=Limits().odd_corner_deg,
            left_out=say(
                "{odd_corner_deg:g}; ours, no source",
                odd_corner_deg=Limits().odd_corner_deg,
            ),
            high=45.0,
        ),
        Key(
            name="apart",
            kind=Kind.LENGTH,
            meaning=say("A reveal whose opposite sides differ by so much is priced to be re-set."),
            example=Limits().apart_mm,
            left_out=say("{apart_mm:g} mm; ours, no source", apart_mm=Limits().apart_mm),
            above=True,
            high=1000.0,
        ),
        Key(
            name="proud",
            kind=Kind.LENGTH,
            meaning=say(
                "A corner so far proud or shy is priced to be packed, where "
                "the house file asks for that."
            ),
            example=Limits().proud_mm,
            left_out=say("{proud_mm:g} mm; ours, no source", proud_mm=Limits().proud_mm),
            above=True,
            high=100.0,
        ),
    ),
)

RATES: Final = Table(
    title=say("the rates"),
    keys=(
        Key(
            name="format",
            kind=Kind.TEXT,
            meaning=say("Which kind of file this is."),
            example=RATES_FORMAT,
            required=True,
        ),
        Key(
            name="crew",
            kind=Kind.TEXT,
            meaning=say("Who quotes, as it stands on the paper."),
            example=say("Two Benches Joinery"),
            required=True,
        ),
        Key(
            name="address",
            kind=Kind.CODES,
            meaning=say("Lines below it: where, and how to pay."),
            example=[say("4 Made-up Lane")],
            left_out=say("not printed"),
        ),
        Key(
            name="currency",
            kind=Kind.TEXT,
            meaning=say("Three letters, ISO 4217."),
            example="GBP",
            required=True,
        ),
        Key(
            name="hour",
            kind=Kind.PRICE,
            meaning=say("What an hour of one person costs, without tax."),
            example=38.00,
            required=True,
            high=DEAREST,
        ),
        Key(
            name="margin",
            kind=Kind.PRICE,
            meaning=say(
                "Part of the price that is kept, in percent of the price; or write markup."
            ),
            example=15,
            left_out=say("none, unless markup says so"),
            high=1000.0,
        ),
        Key(
            name="markup",
            kind=Kind.PRICE,
            meaning=say("What is put on the cost, in percent of the cost; or write margin."),
            example=18,
            left_out=say("none, unless margin says so"),
            high=1000.0,
        ),
        Key(
            name="sure",
            kind=Kind.NUMBER,
            meaning=say("Hours and timber of a quote are enough so often."),
            example=ASSUMED_SURE,
            left_out=say(
                "{assumed_sure:g}; ours, no source, and the estimate says so",
                assumed_sure=ASSUMED_SURE,
            ),
            low=0.5,
            high=0.95,
        ),
        Key(
            name="valid_days",
            kind=Kind.COUNT,
            meaning=say("For how many days a quote holds."),
            example=ASSUMED_VALID_DAYS,
            left_out=f"{ASSUMED_VALID_DAYS}",
            low=1.0,
            high=3650.0,
        ),
        Key(
            name="pay_days",
            kind=Kind.COUNT,
            meaning=say("How many days after an invoice it is to be paid."),
            example=ASSUMED_PAY_DAYS,
            left_out=f"{ASSUMED_PAY_DAYS}",
            low=0.0,
            high=3650.0,
        ),
        Key(
            name="units",
            kind=Kind.CHOICE,
            meaning=say(
                "Running work by the metre (mm) or by the foot (in); bare lengths likewise."
            ),
            example="mm",
            choices=("mm", "in"),
            left_out="mm",
        ),
        Key(
            name="timber",
            kind=Kind.CHOICE,
            meaning=say("Whether the mouldings are in the price, or the client buys them."),
            example="ours",
            choices=tuple(each.value for each in Timber),
            left_out="ours",
        ),
        Key(
            name="exclusions",
            kind=Kind.CODES,
            meaning=say("What the price doesn't hold."),
            example=["painting"],
            left_out=say("none of the crew's own"),
        ),
        Key(
            name="tax",
            kind=Kind.TABLE,
            meaning=say("The tax that is charged."),
            example=TAX.example(),
            left_out=say("none is charged, and the sheets say so"),
            table=TAX,
        ),
        Key(
            name="limits",
            kind=Kind.TABLE,
            meaning=say("From where on an opening is more work."),
            example=LIMITS.example(),
            left_out=say("as below"),
            table=LIMITS,
        ),
        Key(
            name="hours",
            kind=Kind.TABLE,
            meaning=say(
                "Hours of one person for one of each kind of work: least, "
                "likely and most, or one figure, taken as likely with "
                "{less:.0f} percent less to {more:.0f} percent more (ours).",
                less=100 * (1 - LESS),
                more=100 * (MORE - 1),
            ),
            example=HOURS.example(),
            left_out=say("the figures to start from"),
            table=HOURS,
        ),
    ),
)
