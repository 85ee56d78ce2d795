/** What was shown in older versions of a lesson beside what was shown in this one: by aim, nothing lost. */
import type { Account } from './account.ts';
import type { Kept, Practice } from './practice.ts';

/** Older versions kept of one lesson: enough for a lesson that changes every term of an apprenticeship. */
const MOST = 12;

const asked = ({ aims }: Account) => aims.reduce((sum, one) => sum + one.asked, 0);
/** Whether anything was answered at all. */
export const saysAnything = (account: Account): boolean =>
  asked(account) > 0 || account.ideas.length > 0 || (account.answers?.length ?? 0) > 0;

/** One account a version, the fuller where there are two; the newest first. */
function once(accounts: readonly Account[]): Account[] {
  const byVersion = new Map<number, Account>();
  for (const account of accounts) {
    const there = byVersion.get(account.version);
    if (!there || asked(account) > asked(there)) byVersion.set(account.version, account);
  }
  return [...byVersion.values()].sort((one, other) => other.version - one.version);
}

/** What a finished lesson's entry in the record says was shown. */
export const accountIn = ({ version, aims, ideas, answers }: Kept): Account => ({
  version,
  aims,
  ideas,
  ...(answers ? { answers } : {}),
});

/** Accounts of versions other than the one the record's entry speaks of, set beside it. */
export function withOlder(practice: Practice, place: string, accounts: readonly Account[]): Practice {
  const now = practice.lessons[place]?.version;
  const all = once([...(practice.older?.[place] ?? []), ...accounts.filter(saysAnything)]);
  const rest = all.filter(({ version }) => version !== now).slice(0, MOST);
  if (rest.length === 0) return practice;
  return { ...practice, older: { ...practice.older, [place]: rest } };
}

/** Everything shown in a lesson: the entry of its last finish first, then other versions, the newest first. */
export function accountsOf({ lessons, older }: Practice, place: string): readonly Account[] {
  const kept = lessons[place];
  return [...(kept ? [accountIn(kept)] : []), ...(older?.[place] ?? [])];
}

export interface Standing {
  readonly aim: string;
  readonly asked: number;
  readonly right: number;
  /** Version of the lesson it was shown in. */
  readonly version: number;
}

/** How each aim of a lesson stands: by the latest account that has a question answered for it. */
export function standings(accounts: readonly Account[], aims: readonly string[]): Standing[] {
  return aims.flatMap((aim) => {
    for (const account of accounts) {
      const found = account.aims.find((one) => one.aim === aim && one.asked > 0);
      if (found) return [{ aim, asked: found.asked, right: found.right, version: account.version }];
    }
    return [];
  });
}

/** Mistaken ideas not yet put right: an older one counts as put right once its question was answered without it. */
export function heldIdeas(
  accounts: readonly Account[],
): (Account['ideas'][number] & { readonly version: number })[] {
  return accounts.flatMap(({ ideas, version }, i) =>
    ideas
      .filter(({ section, changed }) => {
        const question = section.slice(0, section.lastIndexOf('/'));
        const later = accounts.slice(0, i);
        const askedAgain = later.some(({ answers }) => answers?.some((one) => one.section === question));
        return (
          !changed && !askedAgain && !later.some((one) => one.ideas.some((idea) => idea.section === section))
        );
      })
      .map((idea) => ({ ...idea, version })),
  );
}

/** Of each account what belongs to aims the lesson no longer has; accounts with none of it are left out. */
export function gone(accounts: readonly Account[], aims: readonly string[]): Account[] {
  return accounts
    .map((account) => ({
      ...account,
      aims: account.aims.filter(({ aim, asked: times }) => times > 0 && !aims.includes(aim)),
    }))
    .filter((account) => account.aims.length > 0);
}

/** Two lists of accounts as one. */
export function allOlder(mine: Practice, other: Practice): Practice['older'] {
  const places = new Set([...Object.keys(mine.older ?? {}), ...Object.keys(other.older ?? {})]);
  if (places.size === 0) return undefined;
  return Object.fromEntries(
    [...places].map((place) => [
      place,
      once([...(mine.older?.[place] ?? []), ...(other.older?.[place] ?? [])]).slice(0, MOST),
    ]),
  );
}
