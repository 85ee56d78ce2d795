/** Answers to press: a wrong one keeps its reason, a right one ends the choosing. */
import { render, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { describe, expect, test, vi } from 'vitest';
import { Options } from '#ui';

const choices = [
  { id: 'slid', words: 'It slid across' },
  { id: 'steeper', words: 'It climbs faster' },
  { id: 'still', words: 'It stayed put' },
];
const reason = (id: string) => `<p><strong>Why ${id}.</strong> Look again.</p>`;

function setUp(tried: string[] = [], found?: string) {
  const onanswer = vi.fn<(id: string) => void>();
  const view = render(Options, { choices, tried, found, reason, onanswer });
  return { onanswer, user: userEvent.setup(), ...view };
}

describe('Options', () => {
  test('offers every answer, and sends the one pressed by mouse or key', async () => {
    const { onanswer, user } = setUp();
    expect(screen.getAllByRole('button')).toHaveLength(3);
    await user.click(screen.getByRole('button', { name: 'It climbs faster' }));
    screen.getByRole('button', { name: 'It stayed put' }).focus();
    await user.keyboard('{Enter}');
    expect(onanswer.mock.calls).toEqual([['steeper'], ['still']]);
    expect(screen.queryByRole('status')).toBeNull();
  });

  test('words are words: what looks like a tag is shown as it stands', () => {
    const tag = '<img src=x onerror=alert(1)>';
    const { container } = render(Options, {
      choices: [{ id: 'slid', words: tag }],
      tried: [],
      reason,
      onanswer: vi.fn(),
    });
    expect(container.querySelector('img')).toBeNull();
    expect(container.textContent).toContain(tag);
  });

  test('a wrong answer stands with its reason and can be pressed no more; the rest can', () => {
    setUp(['slid']);
    expect(screen.getAllByRole('button')).toHaveLength(2);
    const [first] = screen.getAllByRole('listitem');
    expect(within(first!).getByRole('status').textContent).toContain('Why slid.');
    expect(first!.textContent).toMatch(/Not this:\s+It slid across/);
  });

  test('of two wrong answers only the latest is explained', () => {
    setUp(['slid', 'still']);
    expect(screen.getAllByRole('button')).toHaveLength(1);
    expect(screen.getAllByRole('status').map((each) => each.textContent)).toEqual(['Why still. Look again.']);
  });

  test('a right answer leaves nothing to press', () => {
    setUp(['slid', 'steeper'], 'steeper');
    expect(screen.queryAllByRole('button')).toEqual([]);
    expect(screen.getAllByRole('listitem')[1]!.textContent).toMatch(/Right:\s+It climbs faster/);
    expect(screen.getByRole('status').textContent).toContain('Why steeper.');
  });

  test('the focus goes to the reason when the pressed card is gone', async () => {
    const { onanswer, user, rerender } = setUp();
    onanswer.mockImplementation((id) => void rerender({ tried: [id] }));
    await user.click(screen.getByRole('button', { name: 'It stayed put' }));
    expect(document.activeElement).toBe(screen.getByRole('status'));
  });
});
