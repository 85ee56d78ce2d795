/**
 * The languages there are, the first one being that of the code's own keys. Each is built by itself, so that no
 * page carries two: `LOST_LITRES_LANGUAGE` names the one, and `#language` in package.json finds its messages.
 */
export const languages = ['en', 'de'] as const;
export type Language = (typeof languages)[number];
