/** Reaching one piece of a rig and giving back a changed copy. */
import type { DuctCondition, FanCondition, JointCondition, Piece, Rig } from '../types.ts';

type Of<Kind extends Piece['kind']> = Extract<Piece, { kind: Kind }>;
type Marked = 'duct' | 'fan' | 'grille' | 'terminal' | 'elbow' | 'damper';
type ConditionOf<Kind extends Marked> = NonNullable<Of<Kind>['condition']>;

/** Changes the marks on the piece `at`, when it is of that kind. */
export function mark<Kind extends Marked>(
  rig: Rig,
  at: string,
  kind: Kind,
  change: (condition: ConditionOf<Kind>) => ConditionOf<Kind>,
): Rig {
  return {
    ...rig,
    run: rig.run.map((piece) => {
      if (piece.id !== at || piece.kind !== kind) return piece;
      const { condition = {} } = piece as Extract<Piece, { kind: Marked }>;
      return { ...piece, condition: change(condition as ConditionOf<Kind>) } as Piece;
    }),
  };
}

export const onDuct = (rig: Rig, at: string, change: (condition: DuctCondition) => DuctCondition): Rig =>
  mark(rig, at, 'duct', change);

export const onFan = (rig: Rig, at: string, change: (condition: FanCondition) => FanCondition): Rig =>
  mark(rig, at, 'fan', change);

/** The joint of a duct or elbow at its end nearer the fan. */
export function onJoint(rig: Rig, at: string, change: (joint: JointCondition) => JointCondition): Rig {
  const onPiece = <C extends { readonly joint?: JointCondition }>(condition: C): C => ({
    ...condition,
    joint: change(condition.joint ?? {}),
  });
  return mark(mark(rig, at, 'duct', onPiece), at, 'elbow', onPiece);
}

export const hasJoint = (piece: Piece): boolean => piece.kind === 'duct' || piece.kind === 'elbow';
