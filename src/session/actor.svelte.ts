/** An XState actor read by runes: reading `snapshot` inside a derived or a template follows it. */
import { createSubscriber } from 'svelte/reactivity';
import type { AnyActorRef, SnapshotFrom } from 'xstate';

export class ActorReader<Ref extends AnyActorRef> {
  readonly #subscribe: () => void;
  readonly actor: Ref;

  constructor(actor: Ref) {
    this.actor = actor;
    this.#subscribe = createSubscriber((update) => {
      const subscription = actor.subscribe(() => update());
      return () => subscription.unsubscribe();
    });
  }

  get snapshot(): SnapshotFrom<Ref> {
    this.#subscribe();
    return this.actor.getSnapshot() as SnapshotFrom<Ref>;
  }
}
