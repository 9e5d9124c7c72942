/** What the crew calls the phones that wrote the entries. */

import { signal } from "../core/signal";
import { deviceName, fact, setFact } from "../journal/store";

interface Known {
  readonly own: string;
  readonly names: Readonly<Record<string, string>>;
}

const FACT = "crew-phones";

export const phones = signal<Known>({ own: "", names: {} });

export async function loadPhones(): Promise<void> {
  phones.set({ own: await deviceName(), names: (await fact<Known["names"]>(FACT)) ?? {} });
}

/** Remember the crew's phones; one that has left is called by its name all the same. */
export async function rememberPhones(
  found: readonly { readonly device: string; readonly name: string }[],
): Promise<void> {
  const { own, names } = phones.get();
  const all = { ...names, ...Object.fromEntries(found.map(({ device, name }) => [device, name])) };
  await setFact(FACT, all);
  phones.set({ own, names: all });
}

export function calledBy({ own, names }: Known, device: string): string {
  return device === own ? "this phone" : (names[device] ?? "another phone");
}
