/** While a plan is made or bettered, and what to do where there can't be one. */

import { planner } from "../core/link";
import { useSignal } from "../core/signal";
import type { Standing } from "../house";
import { Refused } from "../parts/said";

export function PlanComing({ standing }: { standing: Standing }) {
  const { progress } = useSignal(planner);
  if (standing.refusal) return <Refused said={standing.refusal} />;
  if (standing.plan && !standing.isFirst) return null;
  const coming = standing.plan ? "First plan: its sticks may still change …" : "Planning …";
  return (
    <p role="status" class="faint">
      {progress === "ready" ? coming : "The plan comes once the planner is ready."}
    </p>
  );
}
