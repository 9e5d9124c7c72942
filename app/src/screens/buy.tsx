/** What to buy: sticks by profile and length, and how good the plan is known to be. */

import { useEffect } from "preact/hooks";
import { needPlan, type Standing } from "../house";
import type { Plan } from "../messages";
import { Frame } from "../parts/frame";
import { FoundMark, HeldMark, ReadyMark } from "../parts/marks";
import { giveText } from "../service/give";
import { link } from "../route";
import { PlanComing } from "./plan_coming";

export function Buy({ standing }: { standing: Standing }) {
  useEffect(needPlan, [standing.fold]);
  const { plan, fold } = standing;
  // A door whose floor nobody has read yet can be cut all the same.
  const counted = new Set(plan?.openings.filter((each) => each.pieces > 0).map((each) => each.mark));
  const held = plan?.openings.filter((each) => each.verdict === "hold") ?? [];
  const unread = fold?.openings.filter((each) => each.left > 0 && !counted.has(each.mark)) ?? [];
  const missing = [...new Set([...held, ...unread].map((each) => each.mark))];
  return (
    <Frame title="What to buy" above={fold?.name} back={link()} house={standing.key} tab="buy">
      <PlanComing standing={standing} />
      {plan && (
        <>
          {missing.length > 0 && (
            <div class="said warning">
              <strong>
                <HeldMark /> Not counted
              </strong>
              <p>
                {missing.join(", ")} {missing.length > 1 ? "are" : "is"} held or not read. Buy for{" "}
                {missing.length > 1 ? "them" : "it"} once read.
              </p>
            </div>
          )}
          {plan.to_buy.length === 0 && <p>Nothing has to be bought.</p>}
          <ul class="stack">
            {plan.to_buy.map((row) => (
              <li key={row.profile + row.length + row.is_spare} class={row.is_spare ? "card buy spare" : "card buy"}>
                <b class="huge">{row.count}</b>
                <span class="grow">
                  <b>
                    {row.profile} of {row.length}
                    {row.is_spare ? ", spare" : ""}
                  </b>
                  <span class="faint block">{row.section}</span>
                </span>
                <span class="figures">{row.price}</span>
              </li>
            ))}
          </ul>
          {plan.money && (
            <p class="row">
              <b class="grow">All together</b>
              <b class="figures big">{plan.money}</b>
            </p>
          )}
          <ul class="stack">
            {plan.proofs.map((proof) => (
              <li key={proof.profile} class="state">
                {proof.is_proved ? <ReadyMark /> : <FoundMark />}
                <span class="wrap">
                  {proof.profile}: {proof.words}
                </span>
              </li>
            ))}
          </ul>
          {plan.goals.length > 0 && (
            <details>
              <summary>What the plan was made for next</summary>
              <ul class="stack">
                {plan.goals.map((goal) => (
                  <li key={goal.words} class="state">
                    {goal.is_proved ? <ReadyMark /> : <FoundMark />}
                    <span class="wrap">{goal.words}</span>
                  </li>
                ))}
              </ul>
            </details>
          )}
          <p class="faint">No substitutes: the pieces are worked out for these sections.</p>
          {plan.to_buy.length > 0 && (
            <button
              class="act"
              disabled={standing.isPlanning}
              onClick={() => void giveText(`Order, ${fold?.name ?? ""}`, orderText(plan))}
            >
              {standing.isFirst ? "The order comes with the final plan" : "Send the order as text"}
            </button>
          )}
        </>
      )}
    </Frame>
  );
}

function orderText(plan: Plan): string {
  const rows = plan.to_buy.map(
    (row) => `${row.count} x ${row.profile} (${row.section}), ${row.length} long${row.is_spare ? ", as spares" : ""}`,
  );
  return [...rows, "No substitutes, please."].join("\n");
}
