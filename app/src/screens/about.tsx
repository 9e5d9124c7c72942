/** What this is, how it looks, and whose work is in it. */

import { useEffect, useState } from "preact/hooks";
import { planner } from "../core/link";
import { useSignal } from "../core/signal";
import { chosenLight, setLight } from "../look/light";
import { Choices } from "../parts/fields";
import { Frame } from "../parts/frame";
import { link } from "../route";
import { promised, standing, type Standing } from "../service/install";
import { NewerWaits } from "./houses";

const STANDING: Readonly<Record<Standing, string>> = {
  fetching: "It is being put on this phone; leave it open.",
  "on this phone": "It is on this phone, and opens without a network.",
  "newer waits": "It is on this phone, and a newer one waits.",
  "only here": "It works while this page is open. This browser can't keep it.",
};

export function About() {
  const [light, choose] = useState(chosenLight());
  const [licences, setLicences] = useState("");
  const isThere = useSignal(standing);
  const isPromised = useSignal(promised);
  const { progress } = useSignal(planner);
  useEffect(() => {
    void fetch("./licences.txt").then(async (found) => setLicences(await found.text()));
  }, []);
  return (
    <Frame title="About" back={link()}>
      <NewerWaits />
      <Choices
        legend="Light"
        value={light}
        choices={[
          { value: "", words: "as the phone" },
          { value: "light", words: "light" },
          { value: "dark", words: "dark" },
          { value: "sun", words: "in the sun" },
        ]}
        change={(value) => {
          setLight(value);
          choose(value);
        }}
      />
      <div class="card">
        <h2>This app</h2>
        <p>{STANDING[isThere]}</p>
        <p>Planner: {progress === "ready" ? "ready" : "getting ready"}.</p>
        <p>
          {isPromised
            ? "The browser has promised to keep what you wrote."
            : "The browser has made no promise to keep what you wrote; copy houses off this phone."}
        </p>
      </div>
      <div class="card">
        <h2>Before you cut</h2>
        <p>
          Figures come from your readings and your settings. Look at the drawing, cut one pair,
          offer it up, then go on. Follow the saw maker's guards and your own safe ways of working;
          nothing here takes their place.
        </p>
      </div>
      <details>
        <summary>Whose work is in it</summary>
        <pre class="licences" tabIndex={0}>
          {licences}
        </pre>
      </details>
    </Frame>
  );
}
