/** While a plan is made, and what to do where there can't be one. */

import { planner } from "../core/link";
import { useSignal } from "../core/signal";
import type { Standing } from "../house";
import { Refused } from "../parts/said";

export function PlanComing({ standing }: { standing: Standing }) {
  const { progress } = useSignal(planner);
  if (standing.refusal) return <Refused said={standing.refusal} />;
  if (standing.plan) return null;
  return (
    <p role="status" class="faint">
      {progress === "ready" ? "Planning …" : "The plan comes once the planner is ready."}
    </p>
  );
}
