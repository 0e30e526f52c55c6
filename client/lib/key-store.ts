/** What the device remembers, text by key. */
export interface KeyStore {
  get(key: string): string | null;
  set(key: string, value: string): void;
  remove(key: string): void;
  keys(): readonly string[];
}

/** The browser's storage; where it is refused (a private window, a full disk) the page remembers while it lives. */
export function browserStore(storageOf: () => Storage): KeyStore {
  const own = memoryStore();
  const storage = attempt(storageOf, null);
  if (storage === null) return own;
  return {
    get: (key) => own.get(key) ?? attempt(() => storage.getItem(key), null),
    set: (key, value) => {
      const kept = attempt(() => {
        storage.setItem(key, value);
        return true;
      }, false);
      if (kept) own.remove(key);
      else own.set(key, value);
    },
    remove: (key) => {
      own.remove(key);
      attempt(() => {
        storage.removeItem(key);
      }, undefined);
    },
    keys: () => [...new Set([...own.keys(), ...attempt(() => Object.keys(storage), [])])],
  };
}

export function memoryStore(): KeyStore {
  const values = new Map<string, string>();
  return {
    get: (key) => values.get(key) ?? null,
    set: (key, value) => void values.set(key, value),
    remove: (key) => void values.delete(key),
    keys: () => [...values.keys()],
  };
}

function attempt<T>(read: () => T, otherwise: T): T {
  try {
    return read();
  } catch {
    return otherwise;
  }
}
