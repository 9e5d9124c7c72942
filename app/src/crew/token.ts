/** The one-time token of a link that the laptop shows as a code. */

let token: string | undefined;

/**
 * Take a token out of the address.
 *
 * It is gone from the address and from the way back at once, and is never written down: whoever has
 * it may knock.
 */
export function takeToken(): void {
  const found = /^#crew=([\w-]{16,100})$/.exec(location.hash)?.[1];
  if (!found) return;
  token = found;
  history.replaceState(null, "", "#/crew");
}

/** The token, once. */
export function useUpToken(): string | undefined {
  const found = token;
  token = undefined;
  return found;
}

export function hasToken(): boolean {
  return token !== undefined;
}
