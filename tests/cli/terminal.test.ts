import { PassThrough } from 'node:stream';
import { describe, expect, test } from 'vitest';
import { terminalPrompt } from '../../src/cli/terminal.ts';

const CTRL_C = '\u0003';
const CTRL_D = '\u0004';

function terminal() {
  const keys = new PassThrough();
  const screen = new PassThrough();
  const prompt = terminalPrompt((line) => (line === 'Ro' ? [['Rowan: '], 'Ro'] : [[], line]), keys, screen);
  return { prompt, press: (text: string) => keys.write(text), shown: () => String(screen.read() ?? '') };
}

describe('the prompt at a terminal', () => {
  test('shows its label, and lets a given line be changed', async () => {
    const { prompt, press, shown } = terminal();
    const asked = prompt.ask('14 Feb: ', 'A1: chasing');
    press(', lights off\r');
    expect(await asked).toEqual({ kind: 'words', words: 'A1: chasing, lights off' });
    expect(shown()).toContain('14 Feb: ');
    prompt.close();
  });

  test('completes with Tab', async () => {
    const { prompt, press } = terminal();
    const asked = prompt.ask('', '');
    press('Ro\t');
    press('bonded\r');
    expect(await asked).toEqual({ kind: 'words', words: 'Rowan: bonded' });
    prompt.close();
  });

  test('loses no line of a paste', async () => {
    const { prompt, press } = terminal();
    const first = prompt.ask('', '');
    press('one\rtwo\rthree\r');
    expect(await first).toEqual({ kind: 'words', words: 'one' });
    expect(prompt.hasMore()).toBe(true);
    expect(await prompt.ask('', '')).toEqual({ kind: 'words', words: 'two' });
    expect(await prompt.ask('', '')).toEqual({ kind: 'words', words: 'three' });
    expect(prompt.hasMore()).toBe(false);
    prompt.close();
  });

  test.each([
    ['half a li', CTRL_C, 'half a li'],
    ['', CTRL_D, ''],
  ])('gives back what stood there when it is left (%j)', async (typed, key, words) => {
    const { prompt, press } = terminal();
    const asked = prompt.ask('', '');
    press(typed + key);
    expect(await asked).toEqual({ kind: 'left', words });
    expect(await prompt.ask('', '')).toEqual({ kind: 'left', words });
    prompt.close();
  });
});
