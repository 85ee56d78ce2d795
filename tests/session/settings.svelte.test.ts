/** What a reader has chosen, and what becomes of stored choices nobody could have made. */
import '../screen/page.ts';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { readSettings, settings } from '#session';
import { defaults } from '#units';

const fresh = { choice: defaults, theme: 'device' };

afterEach(() => {
  vi.restoreAllMocks();
  localStorage.clear();
  settings.load();
  delete document.documentElement.dataset.theme;
});

describe('readSettings', () => {
  test.each([null, '', '{', 'null', '7', '"cfm"', '[]', '{}', '{"flow":7,"pressure":null,"theme":[]}'])(
    'falls back on %j',
    (text) => expect(readSettings(text)).toEqual(fresh),
  );

  test('takes each choice by itself', () => {
    expect(readSettings('{"flow":"cfm","pressure":"bar","theme":"blueprint"}')).toEqual({
      choice: { flow: 'cfm', pressure: 'Pa' },
      theme: 'blueprint',
    });
    // A unit of another quantity is no unit of flow.
    expect(readSettings('{"flow":"Pa","pressure":"in w.g.","theme":"dark"}')).toEqual({
      choice: { flow: 'L/s', pressure: 'in w.g.' },
      theme: 'device',
    });
  });
});

describe('settings', () => {
  test('come back as they were set', () => {
    settings.setFlow('m3/h');
    settings.setPressure('in w.g.');
    settings.setTheme('blueprint');
    expect(document.documentElement.dataset.theme).toBe('dark');
    expect(readSettings(localStorage.getItem('lost-litres.settings'))).toEqual({
      choice: { flow: 'm3/h', pressure: 'in w.g.' },
      theme: 'blueprint',
    });
    settings.load();
    expect(settings.choice).toEqual({ flow: 'm3/h', pressure: 'in w.g.' });
    settings.setTheme('device');
    expect(document.documentElement.dataset.theme).toBeUndefined();
  });

  test('hold for the page where nothing can be kept', () => {
    const closed = () => {
      throw new DOMException('closed', 'SecurityError');
    };
    vi.spyOn(Storage.prototype, 'getItem').mockImplementation(closed);
    vi.spyOn(Storage.prototype, 'setItem').mockImplementation(closed);
    settings.load();
    expect(settings.choice).toEqual(defaults);
    settings.setFlow('cfm');
    expect(settings.choice.flow).toBe('cfm');
  });
});
