/** The machine walked along every edge of its graph, with right and wrong payloads. */
import { beforeAll, describe, expect, it } from 'vitest';
import { createActor, type AnyStateNode, type AnyTransitionDefinition } from 'xstate';
import { adjacencyMapToArray, getAdjacencyMap } from 'xstate/graph';
import { lessonMachine, phase, possible, type Lesson, type LessonEvent, type LessonSnapshot } from '#lesson';
import { broken } from './invariants.ts';
import { EVERY_EVENT, mixedLesson, smallLesson, WIDE_EVENTS, wideLesson } from './small.ts';

/** What each lesson's graph holds. */
const walks = new Map<Lesson, { state: LessonSnapshot; event: LessonEvent }[]>();
const LIMIT = 40_000;

/** Answers given again and again make the graph endless: only the last one decides what can happen next. */
function serialize(snapshot: LessonSnapshot): string {
  const { stepIndex, furthest, records, repairs, finished } = snapshot.context;
  const ids = snapshot.context.lesson.steps.map(({ id }) => id);
  const inOrder = Object.entries(records).sort(([one], [other]) => ids.indexOf(one) - ids.indexOf(other));
  const short = inOrder.map(([id, record]) => [
    id,
    record.prediction?.flow_L_s,
    record.lockedPrediction?.flow_L_s,
    record.revealed,
    record.observations.at(-1),
    record.explanations.at(-1),
    // Whether more than one try was needed decides if a second question comes.
    record.explanations.length > 1,
    record.again?.at(-1),
    record.prediction?.option,
    // Of the entry check only the leap counts, once it is left: it may be passed by at any point of it.
    stepIndex === 0 && id === 'entry' ? [record.begun, Object.keys(record.entry ?? {}).sort()] : null,
    Object.values(record.entry ?? {}).join() === 'a,b',
  ]);
  return JSON.stringify([snapshot.value, stepIndex, furthest, short, [...repairs].sort(), finished]);
}

function nodesOf(node: AnyStateNode): AnyStateNode[] {
  return [node, ...Object.values(node.states).flatMap(nodesOf)];
}

/** Every transition written in the machine, with a name for the report. */
function edgesOf(): Map<AnyTransitionDefinition, string> {
  const edges = nodesOf(lessonMachine.root as AnyStateNode).flatMap((node) =>
    [...[...node.transitions.values()].flat(), ...(node.always ?? [])].map(
      (edge) =>
        [edge, `${node.key} ${edge.eventType || 'always'} ${edge.target?.[0]?.key ?? 'stays'}`] as const,
    ),
  );
  return new Map(edges);
}

describe.each([
  ['faults and their mending', smallLesson(), EVERY_EVENT],
  ['a mending in the middle', mixedLesson(), EVERY_EVENT],
  ['an entry check and cases', wideLesson(), WIDE_EVENTS],
])('the lesson machine with %s', (name, lesson, events) => {
  let walked: { state: LessonSnapshot; event: LessonEvent; nextState: LessonSnapshot }[] = [];
  let states = 0;

  beforeAll(() => {
    const map = getAdjacencyMap(lessonMachine, {
      input: { lesson },
      events,
      serializeState: (snapshot) => serialize(snapshot as LessonSnapshot),
      limit: LIMIT,
    });
    states = Object.keys(map).length;
    walked = adjacencyMapToArray(map) as typeof walked;
    walks.set(lesson, walked);
  });

  it('has a graph that ends before the limit and reaches every phase', () => {
    expect(states).toBeGreaterThan(50);
    expect(walked.length).toBeLessThan(LIMIT);
    const phases = new Set(walked.map(({ nextState }) => phase(nextState)));
    const common = ['brief', 'explain', 'finished', 'locked', 'observe', 'predict', 'reveal', 'settled'];
    const own = name.startsWith('an entry') ? ['again', 'asking'] : ['mending'];
    expect([...phases].sort()).toEqual([...common, ...own].sort());
  });

  it('keeps its promises in every state', () => {
    expect(new Set(walked.flatMap(({ nextState }) => broken(lesson, nextState)))).toEqual(new Set());
  });

  it('never changes or loses a locked prediction, but for a restart', () => {
    for (const { state, event, nextState } of walked) {
      if (event.type === 'lesson.restart') continue;
      for (const [id, record] of Object.entries(state.context.records)) {
        if (!record.lockedPrediction) continue;
        expect(nextState.context.records[id]?.lockedPrediction).toEqual(record.lockedPrediction);
      }
    }
  });

  it('takes exactly the events it says are possible', () => {
    for (const { state, event } of walked) {
      expect([phase(state), event, possible(state, event).possible]).toEqual([
        phase(state),
        event,
        state.can(event),
      ]);
    }
  });
});

it('takes every transition that is written in it, in one lesson or another', () => {
  const edges = edgesOf();
  const untaken = new Map(edges);
  for (const [lesson, walked] of walks) {
    for (const { state, event } of walked) {
      const actor = createActor(lessonMachine, {
        input: { lesson },
        snapshot: lessonMachine.resolveState({ value: state.value, context: state.context }),
        inspect: (seen) => {
          if (seen.type === '@xstate.microstep') seen._transitions.forEach((edge) => untaken.delete(edge));
        },
      }).start();
      actor.send(event);
      actor.stop();
      if (untaken.size === 0) break;
    }
  }
  expect(edges.size).toBeGreaterThan(20);
  expect([...untaken.values()]).toEqual([]);
}, 60_000);
