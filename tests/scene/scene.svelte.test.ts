/** The scene as put on the page: what it says, what it marks, what it tells back. */
import { fireEvent, render } from '@testing-library/svelte';
import { expect, test, vi } from 'vitest';
import { seedRig } from '#catalogue';
import { defaults } from '#units';
import { describe as tell, LostHatch, Scene } from '#scene';
import { trouble } from '#scene-trouble';
import { bathroom, caseOf } from './rigs.ts';

// jsdom has none of these; the scene asks for them as it loads: its width, whether the reader wants less movement.
vi.hoisted(() => {
  globalThis.ResizeObserver ??= class {
    observe() {}
    unobserve() {}
    disconnect() {}
  };
  window.matchMedia ??= ((query: string) => ({
    matches: false,
    media: query,
    addEventListener() {},
    removeEventListener() {},
  })) as never;
  HTMLCanvasElement.prototype.getContext = (() => null) as never;
});

const props = (...kinds: string[]) => {
  const { rig, solution, healthy } = bathroom(...kinds);
  return { rig, solution, healthy, choice: defaults, still: true, description: tell(rig, solution) };
};

test('it is a picture with a description', () => {
  const { getByRole } = render(Scene, props('sag'));
  const name = getByRole('img').getAttribute('aria-label')!;
  expect(name).toContain('sags');
  expect(name).toMatch(/\d L\/s leaves the wall/);
});

test('the description names each fault there is and no other', () => {
  const said = (...kinds: string[]) => props(...kinds).description;
  expect(said()).toContain('hangs straight');
  expect(said('crimp')).toContain('crimped');
  expect(said('crimp')).not.toContain('sags');
  expect(said('swap')).toContain('Flexible has been put in for 100 %');
  expect(said('ties')).toContain('4 ties draw');
  expect(said('bunched')).toContain('bunched');
  expect(said('draped')).toContain('spare duct');
});

test('it letters the present fault', () => {
  const label = { title: 'Fault 1', text: 'two supports gone' };
  const { getByText } = render(Scene, { ...props('sag'), present: 'out', faultLabel: label });
  expect(getByText('Fault 1')).toBeTruthy();
  expect(getByText('two supports gone')).toBeTruthy();
});

test('highlight marks the piece and only that piece', async () => {
  const { container, rerender } = render(Scene, { ...props(), highlight: 'out' });
  const lit = () =>
    [...container.querySelectorAll('[data-piece].lit')].map((each) => each.getAttribute('data-piece'));
  expect(lit()).toEqual(['out']);
  await rerender({ highlight: 'fan' });
  expect(lit()).toEqual(['fan']);
  await rerender({ highlight: null });
  expect(lit()).toEqual([]);
});

test('pointing at a piece tells which, and leaving it tells none', async () => {
  const onhighlight = vi.fn();
  const { container } = render(Scene, { ...props(), onhighlight });
  const target = container.querySelectorAll('.target')[3]!;
  await fireEvent.pointerEnter(target);
  expect(onhighlight).toHaveBeenLastCalledWith('out');
  await fireEvent.pointerLeave(target);
  expect(onhighlight).toHaveBeenLastCalledWith(null);
});

test('the lost-air hatch is the one the gap is filled with', () => {
  const { container } = render(Scene, props('crimp'));
  const id = container.querySelector('pattern')!.id;
  expect(container.querySelector(`path[fill="url(#${id})"]`)!.getAttribute('d')).not.toBe('');
  const own = render(LostHatch, { id: 'elsewhere' });
  expect(own.container.querySelector('#elsewhere')).toBeTruthy();
});

test('the duct before a crimp trembles, but never in a still picture', async () => {
  const { container, rerender } = render(Scene, { ...props('crimp'), still: false });
  const shaken = () =>
    [...container.querySelectorAll('.trembles')].map((each) => each.getAttribute('data-piece'));
  expect(shaken()).toEqual(['inlet']);
  await rerender({ still: true });
  expect(shaken()).toEqual([]);
});

test('what is wrong and a meter are drawn where a page brings the drawer for them, and else not', async () => {
  const { rig, solution, healthy } = caseOf('leak', {
    ...seedRig('upstairs-bathroom'),
    faults: [{ kind: 'joint-open', at: 'out', amount: 1 }],
  });
  const meter = { kind: 'bag', place: 'grille', text: '24.5' } as const;
  const shared = { rig, solution, healthy, choice: defaults, still: true, description: 'a leak' };
  const { container, queryByText, rerender } = render(Scene, shared);
  const marked = () =>
    [...container.querySelectorAll('[data-trouble]')].map((each) => each.getAttribute('data-trouble'));
  expect(marked()).toEqual([]);
  await rerender({ trouble, meter });
  expect(marked()).toEqual(['leak', 'joint-open']);
  expect(queryByText('24.5')).toBeTruthy();
});
