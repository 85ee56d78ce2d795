/** Lessons of a reader's own: the two files told apart, kept under keys no built-in lesson has, read back whole or not at all. */
import { describe, expect, it } from 'vitest';
import { progressKey } from '#lesson';
import {
  gather,
  keepOwn,
  ownLesson,
  ownLessons,
  ownPlace,
  ownSlug,
  removeOwn,
  type ListedStorage,
  type Own,
} from '#lesson-own';
import { loadLessons } from '#lesson-load';
import { memory } from './memory.ts';

const listed = (closed: Parameters<typeof memory>[0] = []) => {
  const storage = memory(closed);
  return Object.assign(storage, { keys: () => [...storage.items.keys()] }) satisfies ListedStorage;
};
const own = (slug: string, changed: Partial<Own> = {}): Own => ({
  slug,
  version: 1,
  title: `Title of ${slug}`,
  minutes: 8,
  structure: { name: 'lesson.json', content: '{}' },
  words: { name: 'text.en.md', content: '# Words' },
  ...changed,
});
const named = (...names: string[]) => names.map((name) => ({ name }));

describe('the two files among those chosen', () => {
  it.each<[string, string[], string | undefined, string | undefined]>([
    ['by their names', ['text.en.md', 'lesson.json'], 'lesson.json', 'text.en.md'],
    ['by their endings', ['sag.JSON', 'sag.MD'], 'sag.JSON', 'sag.MD'],
    [
      'in a folder with other things',
      ['a/README.md', 'a/lesson.json', 'a/notes.md', 'a/text.en.md', 'a/plan.json', 'a/photo.png'],
      'a/lesson.json',
      'a/text.en.md',
    ],
    ['with another system’s slashes', ['a\\lesson.json', 'a\\text.en.md'], 'a\\lesson.json', 'a\\text.en.md'],
    ['one alone', ['lesson.json'], 'lesson.json', undefined],
    ['none', ['photo.png'], undefined, undefined],
  ])('%s', (_name, files, structure, words) => {
    const found = gather(named(...files));
    expect([found.several, found.structure?.name, found.words?.name]).toEqual([false, structure, words]);
  });

  it.each([[['a/lesson.json', 'b/lesson.json']], [['a/text.en.md', 'b/text.en.md', 'lesson.json']]])(
    'takes none of several: %j',
    (files) => {
      expect(gather(named(...files))).toEqual({ several: true });
    },
  );
});

describe('what is kept', () => {
  it('comes back as it was written, by title', () => {
    const storage = listed();
    expect(
      [own('zinc', { title: 'A' }), own('sag', { title: 'B' })].map((one) => keepOwn(storage, one)),
    ).toEqual([true, true]);
    expect(ownLessons(storage)).toEqual({
      lessons: [own('zinc', { title: 'A' }), own('sag', { title: 'B' })],
      unreadable: [],
    });
    removeOwn(storage, 'zinc');
    expect(ownLessons(storage).lessons.map(({ slug }) => slug)).toEqual(['sag']);
  });

  it.each([
    ['cut short', '{"format":1,'],
    ['of another format', JSON.stringify({ format: 2, ...own('sag') })],
    ['under another slug', JSON.stringify({ format: 1, ...own('else') })],
    ['with more in it', JSON.stringify({ format: 1, ...own('sag'), html: '<b>' })],
  ])('is not played where it is %s, and can be taken out', (_name, text) => {
    const storage = listed();
    keepOwn(storage, own('sag'));
    storage.items.set('lost-litres.own.sag', text);
    keepOwn(storage, own('whole'));
    expect(ownLesson(storage, 'sag')).toBeUndefined();
    expect(ownLessons(storage)).toEqual({ lessons: [own('whole')], unreadable: ['sag'] });
    removeOwn(storage, 'sag');
    expect(ownLessons(storage).unreadable).toEqual([]);
  });

  it('is nothing, and nothing is thrown, where the storage is closed', () => {
    const closed = listed(['getItem', 'setItem', 'removeItem']);
    expect(keepOwn(closed, own('sag'))).toBe(false);
    expect(ownLesson(closed, 'sag')).toBeUndefined();
    expect(() => removeOwn(closed, 'sag')).not.toThrow();
    closed.keys = () => {
      throw new DOMException('closed', 'SecurityError');
    };
    expect(ownLessons(closed)).toEqual({ lessons: [], unreadable: [] });
  });

  it('is under keys that are none of a built-in lesson, whatever the slug', () => {
    const slugs = [...loadLessons().map(({ lesson }) => lesson.slug), 'own', 'set-aside'];
    const builtIn = new Set(slugs.map(progressKey));
    for (const slug of slugs) {
      expect(builtIn.has(progressKey(ownPlace(slug)))).toBe(false);
      expect(ownSlug(ownPlace(slug))).toBe(slug);
      expect(ownSlug(slug)).toBeUndefined();
    }
  });

  it('no built-in lesson stands at the address of the page', () => {
    expect(loadLessons().map(({ lesson }) => lesson.slug)).not.toContain('own');
  });
});
