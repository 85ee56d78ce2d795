/** A storage of the shape a browser has, in memory; `closed` parts throw as a full or private one does. */
import type { ProgressStorage } from '#lesson';

export function memory(closed: readonly (keyof ProgressStorage)[] = []) {
  const items = new Map<string, string>();
  const open = (name: keyof ProgressStorage) => {
    if (closed.includes(name)) throw new DOMException('closed', 'QuotaExceededError');
  };
  return {
    items,
    getItem: (key: string) => (open('getItem'), items.get(key) ?? null),
    setItem: (key: string, value: string) => (open('setItem'), void items.set(key, value)),
    removeItem: (key: string) => (open('removeItem'), void items.delete(key)),
  };
}
