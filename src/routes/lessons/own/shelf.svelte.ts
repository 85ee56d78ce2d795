/** What stands on the page of a reader's own lessons, and what choosing files does to it. */
import { say } from '#i18n';
import { gather, keepOwn, MOST_BYTES, ownLessons, removeOwn, type Own } from '#lesson-own';
import { browserStorage } from '#session';
import { findOwn, visit } from './visit.ts';

interface Pair {
  readonly structure?: File | undefined;
  readonly words?: File | undefined;
}

const nameOf = (file: File) => file.webkitRelativePath || file.name;

export class Shelf {
  lessons = $state.raw<readonly Own[]>([]);
  unreadable = $state.raw<readonly string[]>([]);
  notice = $state.raw('');
  /** Problems of the lesson last chosen, or warnings where it holds, a line each. */
  lines = $state.raw<readonly string[]>([]);
  /** One of two files, until the other is chosen. */
  waiting = $state.raw<Pair>({});
  /** A good lesson whose slug another one has. */
  rival = $state.raw<Own>();
  removed = $state.raw<Own>();
  busy = $state.raw(false);

  /** What the browser keeps, and what it would not keep on this visit. */
  load(): void {
    const { lessons, unreadable } = ownLessons(browserStorage);
    const loose = [...visit.values()].filter(({ slug }) => !lessons.some((each) => each.slug === slug));
    this.lessons = [...lessons, ...loose];
    this.unreadable = unreadable.filter((slug) => !visit.has(slug));
  }

  /** Says something; what was said before, and asked, is done with. */
  tell(notice: string, lines: readonly string[] = []): void {
    this.notice = notice;
    this.lines = lines;
    this.removed = undefined;
    this.rival = undefined;
  }

  /** Files chosen or dropped. Nothing that is kept changes before the lesson holds. */
  async take(files: readonly File[]): Promise<void> {
    if (this.busy || files.length === 0) return;
    const found = gather(files);
    if (found.several) return this.tell(say('own.several'));
    if (!found.structure && !found.words) return this.tell(say('own.neither'));
    const pair: Pair = { ...this.waiting, ...found };
    const large = [pair.structure, pair.words].find((file) => file && file.size > MOST_BYTES);
    if (large) {
      this.waiting = {};
      return this.tell(say('own.too-large', { name: nameOf(large), most: MOST_BYTES / 1000 }));
    }
    const { structure, words } = pair;
    if (structure && words) {
      this.waiting = {};
      this.busy = true;
      await this.#check(structure, words).finally(() => (this.busy = false));
      return;
    }
    this.waiting = pair;
    const [wants, here] = structure ? (['words', structure] as const) : (['structure', words!] as const);
    this.tell(say(`own.wants.${wants}`, { name: nameOf(here) }));
  }

  async #check(...files: readonly [File, File]): Promise<void> {
    this.tell(say('own.checking', { name: nameOf(files[0]) }));
    const read = await Promise.all(
      files.map(async (file) => ({ name: nameOf(file), content: await file.text() })),
    ).catch(() => undefined);
    if (!read) return this.tell(say('own.unread', { name: files.map(nameOf).join(', ') }));
    const [structure, words] = [read[0]!, read[1]!];
    const { checking } = await import('./checking.ts');
    const checked = await checking({ structure, words }).checked;
    if (!checked) return this.tell(say('own.no-answer'));
    if (!checked.ok) return this.tell(say('own.problems', { count: checked.lines.length }), checked.lines);
    const { lesson, text } = checked.playable;
    const { slug, version, minutes } = lesson;
    const own: Own = { slug, version, title: text.title, minutes, structure, words };
    const before = findOwn(slug);
    if (!before || before.title === own.title) return this.keep(own, checked.warnings);
    this.tell(say('own.same-slug', { before: before.title, slug, after: own.title }), checked.warnings);
    this.rival = own;
  }

  /** A lesson that holds takes its place among the others. */
  keep(own: Own, warnings: readonly string[] = []): void {
    const before = findOwn(own.slug);
    visit.set(own.slug, own);
    const { title, version } = own;
    if (!keepOwn(browserStorage, own)) this.tell(say('own.visit', { title }), warnings);
    else if (before && before.version !== version)
      this.tell(say('own.replaced', { title, version, before: before.version }), warnings);
    else this.tell(say('own.kept', { title, version }), warnings);
    this.load();
  }

  leave(): void {
    const title = this.rival && findOwn(this.rival.slug)?.title;
    this.tell(say('own.left', { title: title ?? '' }));
  }

  remove(slug: string): void {
    const own = findOwn(slug);
    visit.delete(slug);
    removeOwn(browserStorage, slug);
    this.tell(say('own.removed', { title: own?.title ?? slug }));
    this.removed = own;
    this.load();
  }
}
