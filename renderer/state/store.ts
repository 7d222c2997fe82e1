/** A value that others may watch. `set` with an equal reference wakes nobody. */
export type Store<T> = {
  get(): T;
  set(next: T | ((current: T) => T)): void;
  subscribe(listener: () => void): () => void;
};

export function createStore<T>(initial: T): Store<T> {
  let value = initial;
  const listeners = new Set<() => void>();
  return {
    get: () => value,
    set(next) {
      const taken = typeof next === 'function' ? (next as (current: T) => T)(value) : next;
      if (Object.is(taken, value)) return;
      value = taken;
      for (const listener of [...listeners]) listener();
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
