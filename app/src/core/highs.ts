/** HiGHS behind the core's port of linear and integer programmes. */

import type { Highs, ModelData, OptionValue } from "highs";
import type { Across } from "./calls";

type Doubles = Across<Float64Array>;
type Whole = Across<Int32Array>;

interface Told {
  readonly integral: boolean;
  readonly options: Readonly<Record<string, OptionValue>>;
}

interface Found {
  readonly status: "optimal" | "feasible" | "infeasible" | "unsolved";
  readonly values: number[];
  readonly duals: number[];
  readonly objective: number;
  readonly bound: number | null;
  readonly solver: string;
}

/** HiGHS says so when it holds a solution that keeps every row. */
const HAS_SOLUTION = 2;

/** Return the call that the core's solver makes: a problem as arrays in, what was found as text. */
export function solverCall(highs: Highs) {
  return (
    costs: Doubles,
    lowers: Doubles,
    uppers: Doubles,
    starts: Whole,
    rows: Whole,
    coefficients: Doubles,
    rowLowers: Doubles,
    rowUppers: Doubles,
    start: Doubles,
    toldText: string,
  ): string => {
    const told = JSON.parse(toldText) as Told;
    const colCost = costs.toJs();
    const rowLower = rowLowers.toJs();
    const problem: ModelData = {
      numCols: colCost.length,
      numRows: rowLower.length,
      colCost,
      colLower: lowers.toJs(),
      colUpper: uppers.toJs(),
      rowLower,
      rowUpper: rowUppers.toJs(),
      matrix: {
        format: "csc",
        numRows: rowLower.length,
        numCols: colCost.length,
        starts: starts.toJs(),
        indices: rows.toJs(),
        values: coefficients.toJs(),
      },
      ...(told.integral ? { integrality: new Int32Array(colCost.length).fill(1) } : {}),
    };
    return JSON.stringify(solve(highs, problem, start.toJs(), told));
  };
}

function solve(highs: Highs, problem: ModelData, start: Float64Array, told: Told): Found {
  const solver = `HiGHS ${highs.version.string}`;
  const nothing = { values: [], duals: [], objective: 0, bound: null, solver };
  return highs.withModel(problem, (model): Found => {
    model.options.set({ output_flag: false });
    for (const [name, value] of Object.entries(told.options)) {
      if (name !== "threads") model.options.set(name, value);
    }
    if (told.integral && start.length) model.setSolution({ colValue: start });
    model.run();
    const ended = model.getModelStatus();
    const known = highs.constants.modelStatus;
    if (ended === known.infeasible || ended === known.unboundedOrInfeasible) {
      return { ...nothing, status: "infeasible" };
    }
    if (model.info.get("primal_solution_status") !== HAS_SOLUTION) {
      return { ...nothing, status: "unsolved" };
    }
    const best = ended === known.optimal;
    const found = model.getSolution();
    const objective = model.getObjectiveValue();
    const bound = told.integral ? Number(model.info.get("mip_dual_bound")) : objective;
    return {
      status: best ? "optimal" : "feasible",
      values: Array.from(found.colValue),
      duals: best && !told.integral ? Array.from(found.rowDual) : [],
      objective,
      bound: Number.isFinite(bound) && (told.integral || best) ? bound : null,
      solver,
    };
  });
}
