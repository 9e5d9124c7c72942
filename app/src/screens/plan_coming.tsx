/** While a plan is made or bettered, and what to do where there can't be one. */

import { planner } from "../core/link";
import { useSignal } from "../core/signal";
import type { Standing } from "../house";
import { Refused } from "../parts/said";

const MAY_CHANGE = "First plan: its sticks may still change …";

/** What waits for the plan; `first` is said of a first plan, where its sticks are shown or not. */
export function PlanComing({ standing, first = MAY_CHANGE }: { standing: Standing; first?: string }) {
  const { progress } = useSignal(planner);
  if (standing.refusal) return <Refused said={standing.refusal} />;
  if (standing.plan && !standing.isFirst) return null;
  const coming = standing.plan ? first : "Planning …";
  return (
    <p role="status" class="faint">
      {progress === "ready" ? coming : "The plan comes once the planner is ready."}
    </p>
  );
}
