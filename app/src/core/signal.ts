/** A value that screens watch: the smallest thing that does it. */

import { useEffect, useState } from "preact/hooks";

export interface Signal<T> {
  get(): T;
  set(value: T): void;
  watch(watcher: (value: T) => void): () => void;
}

export function signal<T>(first: T): Signal<T> {
  let value = first;
  const watchers = new Set<(value: T) => void>();
  return {
    get: () => value,
    set(next) {
      value = next;
      for (const watcher of [...watchers]) watcher(next);
    },
    watch(watcher) {
      watchers.add(watcher);
      return () => watchers.delete(watcher);
    },
  };
}

/** The value of a signal; the screen is drawn again whenever it changes. */
export function useSignal<T>(source: Signal<T>): T {
  const [value, setValue] = useState(source.get());
  useEffect(() => {
    setValue(source.get());
    return source.watch((next) => setValue(() => next));
  }, [source]);
  return value;
}
