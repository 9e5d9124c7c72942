/** What the worker puts behind the core's ports, for a core that runs in Node. */

import { tally, type ToldHouse } from "../../src/core/lines";

export { solverCall } from "../../src/core/highs";

export const judging = (told: string, lines: { toJs(): Float64Array }): string =>
  JSON.stringify(tally(JSON.parse(told) as ToldHouse, lines.toJs()));
