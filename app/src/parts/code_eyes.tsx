/** What reads codes: the camera, or pictures that were taken. */

import { useEffect, useRef, useState } from "preact/hooks";
import { codeInPicture, codeReader } from "../service/codes";

interface Props {
  /** Called with what a code says, and with the same again while the camera still sees it. */
  readonly take: (text: string) => void | Promise<void>;
  readonly pictures: string;
  /** Whether all that is wanted was read: the camera closes. */
  readonly isDone: boolean;
}

export function CodeEyes({ take, pictures, isDone }: Props) {
  const [told, setTold] = useState("");
  const [isLooking, setLooking] = useState(false);
  useEffect(() => {
    if (isDone) setLooking(false);
  }, [isDone]);
  const pick = async (files: FileList | null) => {
    setTold("");
    for (const file of files ?? []) {
      const text = await codeInPicture(file).catch(() => undefined);
      if (text) await take(text);
      else setTold(`No code is found in ${file.name}. Take it straight on, and nearer.`);
    }
  };
  return (
    <>
      {"mediaDevices" in navigator && (
        <button class="act wide" type="button" onClick={() => setLooking(!isLooking)}>
          {isLooking ? "Close the camera" : "Read with the camera"}
        </button>
      )}
      {isLooking && (
        <Camera
          take={take}
          failed={() => {
            setLooking(false);
            setTold("The camera can't be had. Take a picture and read that instead.");
          }}
        />
      )}
      <label class="field">
        <span>{pictures}</span>
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
    </>
  );
}

const LOOK_EVERY_MS = 150;

function Camera({
  take,
  failed,
}: {
  take: (text: string) => void | Promise<void>;
  failed: () => void;
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
      .catch(failed)
      .finally(() => stream?.getTracks().forEach((track) => track.stop()));
    return () => {
      isOpen = false;
      stream?.getTracks().forEach((track) => track.stop());
    };
  }, []);
  return <video ref={video} class="camera" muted playsInline aria-label="What the camera sees" />;
}
