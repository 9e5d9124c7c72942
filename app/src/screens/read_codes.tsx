/** A house off another phone's screen: by the camera, or from pictures of it. */

import { useEffect, useRef, useState } from "preact/hooks";
import { ask } from "../core/link";
import type { Refusal } from "../messages";
import { Refused } from "../parts/said";
import { codeInPicture, codeReader } from "../service/codes";

interface Props {
  /** What the pictures hold, once all of them are read. */
  readonly got: (text: string) => void;
}

export function ReadCodes({ got }: Props) {
  const parts = useRef<readonly string[]>([]);
  const [told, setTold] = useState("");
  const [refusal, setRefusal] = useState<Refusal | undefined>();
  const [isLooking, setLooking] = useState(false);

  const take = async (text: string): Promise<void> => {
    if (parts.current.includes(text)) return;
    const found = await ask<"joined">({ ask: "joined", parts: [...parts.current, text] });
    if (found.kind === "refusal") {
      setRefusal(found);
      return;
    }
    setRefusal(undefined);
    parts.current = [...parts.current, text];
    const read = found.count - found.missing.length;
    setTold(
      found.missing.length
        ? `${read} of ${found.count} read; still wanted: ${found.missing.join(", ")}.`
        : `All ${found.count} read.`,
    );
    if (found.text) {
      setLooking(false);
      got(found.text);
    }
  };
  const pick = async (files: FileList | null) => {
    for (const file of files ?? []) {
      const text = await codeInPicture(file).catch(() => undefined);
      if (text) await take(text);
      else setTold(`No code is found in ${file.name}. Take it straight on, and nearer.`);
    }
  };
  return (
    <section class="stack" aria-label="From another phone's screen">
      <h2>From another phone's screen</h2>
      <p class="faint">There: House, Hand over, Show it in pictures.</p>
      {"mediaDevices" in navigator && (
        <button class="act wide" type="button" onClick={() => setLooking(!isLooking)}>
          {isLooking ? "Close the camera" : "Read with the camera"}
        </button>
      )}
      {isLooking && <Camera take={take} failed={(why) => {
        setLooking(false);
        setTold(why);
      }} />}
      <label class="field">
        <span>Or pictures of its screen</span>
        <input
          type="file"
          accept="image/*"
          multiple
          onChange={(event) => void pick(event.currentTarget.files)}
        />
      </label>
      <p role="status" class="told">
        {told}
      </p>
      {refusal && <Refused said={refusal} />}
    </section>
  );
}

const LOOK_EVERY_MS = 150;

function Camera({
  take,
  failed,
}: {
  take: (text: string) => Promise<void>;
  failed: (why: string) => void;
}) {
  const video = useRef<HTMLVideoElement>(null);
  useEffect(() => {
    let stream: MediaStream | undefined;
    let isOpen = true;
    const look = async () => {
      stream = await navigator.mediaDevices.getUserMedia({ video: { facingMode: "environment" } });
      const shown = video.current;
      if (!shown || !isOpen) return;
      shown.srcObject = stream;
      await shown.play();
      const read = await codeReader();
      while (isOpen) {
        const text = shown.videoWidth ? await read(shown) : undefined;
        if (text && isOpen) await take(text);
        await new Promise((resolve) => setTimeout(resolve, LOOK_EVERY_MS));
      }
    };
    look()
      .catch(() => failed("The camera can't be had. Take pictures of the screen, or send a file."))
      .finally(() => stream?.getTracks().forEach((track) => track.stop()));
    return () => {
      isOpen = false;
      stream?.getTracks().forEach((track) => track.stop());
    };
  }, []);
  return <video ref={video} class="camera" muted playsInline aria-label="What the camera sees" />;
}
