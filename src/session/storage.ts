/** The browser's own storage, reached only when it is used: a page that may not have any still runs. */
export const browserStorage = {
  getItem: (key: string): string | null => localStorage.getItem(key),
  setItem: (key: string, value: string): void => localStorage.setItem(key, value),
  removeItem: (key: string): void => localStorage.removeItem(key),
  keys: (): string[] => Object.keys(localStorage),
};
