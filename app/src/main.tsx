/** The page: starts the planner and the service worker, and shows where the carpenter is. */

import { render } from "preact";
import { useEffect } from "preact/hooks";
import { planner, startPlanner } from "./core/link";
import { useSignal } from "./core/signal";
import { loadMember } from "./crew/member";
import { loadPhones } from "./crew/phones";
import { startSharing } from "./crew/share";
import { current, loadLimits, open, watchOthers } from "./house";
import "./look/tokens.css";
import "./look/frame.css";
import "./look/things.css";
import "./look/keypad.css";
import "./look/screens.css";
import { show } from "./look/light";
import { Frame } from "./parts/frame";
import { link, route, watchRoute } from "./route";
import { About } from "./screens/about";
import { AddOpening } from "./screens/add";
import { Begin } from "./screens/begin";
import { Buy } from "./screens/buy";
import { Crew } from "./screens/crew";
import { Fill } from "./screens/fill";
import { Glance } from "./screens/glance";
import { HandOver } from "./screens/hand_over";
import { Houses } from "./screens/houses";
import { Label } from "./screens/label";
import { OpenFile } from "./screens/open";
import { Opening } from "./screens/opening";
import { Place } from "./screens/place";
import { Read } from "./screens/read";
import { Saw } from "./screens/saw";
import { Settings } from "./screens/settings";
import { Sheets } from "./screens/sheets";
import { Wall } from "./screens/wall";
import { install } from "./service/install";

function App() {
  const [first, ...rest] = useSignal(route);
  switch (first) {
    case "begin":
      return <Begin />;
    case "open":
      return <OpenFile />;
    case "crew":
      return <Crew />;
    case "about":
      return <About />;
    case "h":
      return <InHouse path={rest} />;
    default:
      return <Houses />;
  }
}

function InHouse({ path }: { path: readonly string[] }) {
  const [key, screen, ...more] = path;
  const standing = useSignal(current);
  useEffect(() => {
    if (key) void open(key);
  }, [key]);
  if (!standing || standing.key !== key) {
    return (
      <Frame title="House" back={link()} house={key}>
        {null}
      </Frame>
    );
  }
  switch (screen) {
    case "read":
      return <Read standing={standing} mark={more[0]} line={more[1]} />;
    case "add":
      return <AddOpening standing={standing} />;
    case "place":
      return <Place key={more.join("/")} standing={standing} way={more} />;
    case "fill":
      return <Fill standing={standing} name={more[0] ?? ""} way={more.slice(1)} />;
    case "hand-over":
      return <HandOver standing={standing} />;
    case "opening":
      return <Opening standing={standing} mark={more[0] ?? ""} />;
    case "saw":
      return <Saw standing={standing} />;
    case "label":
      return <Label standing={standing} text={more[0]} />;
    case "wall":
      return <Wall standing={standing} mark={more[0]} />;
    case "buy":
      return <Buy standing={standing} />;
    case "sheets":
      return <Sheets standing={standing} name={more[0]} />;
    case "settings":
      return <Settings standing={standing} />;
    default:
      return <Glance standing={standing} />;
  }
}

show();
watchRoute();
watchOthers();
startPlanner();
void loadLimits();
const root = document.getElementById("app");
if (root) render(<App />, root);
void install();
// Where the store can't be opened, every screen says so.
void Promise.all([loadMember(), loadPhones()]).then(startSharing, () => undefined);
planner.watch(({ progress, share }) => performance.mark(`longpoint-${progress}-${share}`));
