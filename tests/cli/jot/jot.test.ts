import { describe, expect, test } from 'vitest';
import { tankside } from '../../support/run.ts';
import type { World } from '../../support/run.ts';

const FILE = '/room/fishroom.txt';
const ROOM = `2026-01-04 room: units metric; currency EUR
2026-01-04 loop Long: sump 240 L; prefilter 6 layers; spills at 80 mm
2026-01-04 tank A1: 100 x 40 x 40 cm; on Long
2026-01-04 tank C1: 54 L; alone; sponge filter
2026-01-04 species krib: Pelvicachromis taeniatus; cave spawner; sale at 35 mm or 16 weeks; price 6.00
2026-01-04 pair Rowan: krib; male 80 mm; female 60 mm; in A1
2026-01-04 C1: water change 30 % every 7 days
2026-02-10 C1: water change 30 %
`;

function jot(words: string, world: World = {}) {
  const argv = ['jot', ...words.split(' ').filter((word) => word !== '')];
  return tankside(argv, { today: '2026-02-15', ...world, files: { [FILE]: ROOM, ...world.files } });
}

describe('one line from the shell', () => {
  test('is dated, saved, and shown as it was understood', async () => {
    const { status, out, err, files } = await jot('a1: Chasing – male on female, Lights off');
    expect(files[FILE]).toBe(`${ROOM}2026-02-15 a1: Chasing – male on female, Lights off\n`);
    expect(out).toContain('saved 2026-02-15 a1: Chasing – male on female, Lights off');
    expect(out).toContain('read as A1: chasing, male on female; lights off');
    expect([status, err]).toEqual([0, '']);
  });

  test('says what it begins, ends and moves', async () => {
    const chased = `${ROOM}2026-02-13 A1: chasing; lights off\n`;
    expect((await jot('A1: chasing')).out).toMatch(/due now: A1, /);
    const { out } = await jot('A1: made up, lights on', { files: { [FILE]: chased } });
    expect(out).toContain('dispute of Rowan over after 2 days: made up');
    expect(out).toContain('undone: A1 lights off, since 2026-02-13');
    expect((await jot('C1: water change 30 %')).out).toMatch(/due next: C1, .*2026-02-22/);
  });

  test('of a past day says what it makes due today: that is the list that the keeper works by', async () => {
    const { out } = await jot('--on 2026-02-15 A1: spawned', { today: '2026-03-07' });
    expect(out).toContain('saved 2026-02-15 A1: spawned brood Rowan-1');
    expect(out).toContain('due now: A1, no word of swimming young: look');
    expect(out).not.toContain('look for wrigglers');
    expect((await tankside(['jot', '--help'])).out.replace(/\s+/g, ' ')).toContain('is told of today all the same');
  });

  test('says what toxic ammonia a change of water or a dose can leave, or to test first', async () => {
    const unknown = 'C1: new water can raise pH and toxic ammonia with it. TAN unknown: test first';
    expect((await jot('C1: water change 30 %')).out.replace(/\s+/g, ' ')).toContain(`take care: ${unknown}`);
    const tested = `${ROOM}2026-02-14 C1: test TAN 0.5, pH 7.4, 26 C\n`;
    const { out } = await jot('--json C1: dosed 12 g "sodium bicarbonate"', { files: { [FILE]: tested } });
    // 0.5 mg/L at 26 C: 0.0075 at pH 7.4, 0.0541 at 8.3 (Emerson et al. 1975), rounded outwards.
    expect(out).toContain('"C1: toxic ammonia after it: 0.007–0.055 mg/L as N at pH 7.4–8.3, by TAN 0.5 mg/L');
    expect((await jot('C1: dosed 12 g "salt"')).out).not.toContain('take care');
  });

  test('says which tanks a hold reaches by it', async () => {
    const held = `${ROOM}2026-02-14 A1: hold "velvet"\n`;
    const { out } = await jot('C1: shared net with A1', { files: { [FILE]: held } });
    expect(out.replace(/\s+/g, ' ')).toContain('hold of A1 «velvet» now reaches C1 (by the net shared with A1)');
    expect((await jot('C1: all well', { files: { [FILE]: held } })).out).not.toContain('hold of');
  });

  test('names no buyer in JSON, saved or refused', async () => {
    for (const words of ['A1: sold 2 Rowan to "Ann Field"', 'A1: solled 2 Rowan to "Ann Field"']) {
      const { out } = await jot(`--json ${words}`);
      expect(out).toContain('\\"…\\"');
      expect(out).not.toMatch(/Ann|Field/);
      expect((await jot(`--json --with-names ${words}`)).out).toContain('Ann Field');
    }
  });

  test('takes its day from the line, from --on, else from the clock', async () => {
    expect((await jot('2026-02-01 A1: all well')).files[FILE]).toContain('\n2026-02-01 A1: all well\n');
    expect((await jot('--on yesterday A1: all well')).files[FILE]).toContain('\n2026-02-14 A1: all well\n');
    expect((await jot('--on tue A1: all well')).files[FILE]).toContain('\n2026-02-10 A1: all well\n');
    expect((await jot('14.2.2026 A1: all well')).files[FILE]).toContain('\n2026-02-14 A1: all well\n');
    const either = await jot('4/2/2026 A1: all well');
    expect([either.status, either.files[FILE]]).toEqual([2, ROOM]);
    expect(either.err).toContain('«4/2/2026» may be 2026-02-04 or 2026-04-02: write the year first');
    expect((await jot('07:40 A1: all well')).files[FILE]).toContain('\n2026-02-15 07:40 A1: all well\n');
  });

  test('dated ahead is saved, and said to be', async () => {
    const { status, out, files } = await jot('2026-03-15 A1: all well');
    expect([status, files[FILE]]).toEqual([0, `${ROOM}2026-03-15 A1: all well\n`]);
    expect(out.replace(/\s+/g, ' ')).toContain(
      'look again: this line is dated 28 days after today, and counts for nothing until then; ' +
        'the day on which it happened, 2026-02-15 or before',
    );
    expect((await jot('2026-02-16 A1: all well')).out).not.toContain('look again');
    const example = ROOM.replaceAll('2026-', '2036-');
    expect((await jot('2036-03-15 A1: all well', { files: { [FILE]: example } })).out).not.toContain('look again');
  });

  test('that cannot be read is refused with what would be, and nothing is written', async () => {
    for (const bad of ['A7: chasing', 'A1: chassing', '2026-02-30 A1: chasing', 'A1: lost 2', 'nonsense']) {
      const { status, out, err, files } = await jot(bad);
      expect([status, out]).toEqual([2, '']);
      expect(files).toEqual({ [FILE]: ROOM });
      expect(err).toContain('not saved');
      expect(err).toMatch(/write(?: first)?: \S/);
    }
    expect((await jot('A1: chassing')).err).toContain('write: 2026-02-15 A1: chasing');
  });

  test('gets the colon that it lacks', async () => {
    expect((await jot('A1 chasing, lights off')).files[FILE]).toContain('\n2026-02-15 A1: chasing, lights off\n');
  });

  test('gets its colon also where the room refuses it, and then the true cause is told', async () => {
    const { status, err, files } = await jot('C1 spawned about 60 eggs');
    expect([status, files[FILE]]).toEqual([2, ROOM]);
    expect(err).toContain('C1');
    expect(err).not.toContain('colon');
    expect(err).toBe((await jot('C1: spawned about 60 eggs')).err);
  });

  test('is offered its unread words as a remark', async () => {
    const { status, err } = await jot('A1: spawned, about 80 eggs left cave');
    expect(status).toBe(2);
    expect(err).toContain('write: 2026-02-15 A1: spawned, about 80 eggs "left cave"');
    const odd = await jot('A1: chasing, something odd');
    expect(odd.err).toContain('write: 2026-02-15 A1: chasing "something odd"');
  });

  test('is offered as a note where the room would refuse what the language offers', async () => {
    const young = `${ROOM}2026-02-11 C1: bought 6 krib, 20 mm\n`;
    const { err } = await jot('A1: moved 6 krib from C1 to C1', { files: { [FILE]: young } });
    expect(err).toContain('write: 2026-02-15 A1: note moved 6 krib from C1 to C1');
  });

  test('is told once what is wrong with several of its signs', async () => {
    const { err } = await jot("A1: shimmying; 'left cave'");
    expect(err.split("the sign «'» means nothing here")).toHaveLength(2);
  });

  test('can be kept as a note, and can be tried only', async () => {
    const noted = await jot('--as-note A1: she seems; to like # the left cave');
    expect(noted.files[FILE]).toBe(`${ROOM}2026-02-15 A1: note she seems; to like # the left cave\n`);
    const tried = await jot('--dry-run A1: chasing');
    expect([tried.status, tried.files[FILE]]).toEqual([0, ROOM]);
    expect(tried.out).toContain('would be 2026-02-15 A1: chasing');
  });

  test('as JSON, refused too', async () => {
    const refused = await jot('--json A1: chassing');
    expect(JSON.parse(refused.out)).toMatchObject({ saved: false, refused: [{ write: '2026-02-15 A1: chasing' }] });
    const { out } = await jot('--json C1: water change 30 %');
    expect(JSON.parse(out)).toMatchObject({
      version: 1,
      saved: true,
      lines: [{ text: '2026-02-15 C1: water change 30 %', readAs: 'C1: water change 30 %', problems: [] }],
      changes: { begun: [], over: [], broods: [] },
    });
  });
});

describe('names of broods', () => {
  test('are written into the line that begins one', async () => {
    const { files, out } = await jot('A1: spawned, about 90 eggs "left cave"');
    expect(files[FILE]).toContain('\n2026-02-15 A1: spawned brood Rowan-1, about 90 eggs "left cave"\n');
    expect(out).toContain('brood Rowan-1 begins');
  });

  test('are the next unused ones', async () => {
    const earlier = `${ROOM}2026-01-10 A1: spawned brood Rowan-1\n2026-01-12 A1: eggs gone\n`;
    const { files } = await jot('A1: spawned', { files: { [FILE]: earlier } });
    expect(files[FILE]).toContain('2026-02-15 A1: spawned brood Rowan-2\n');
  });
});

describe('a spawn filed late', () => {
  const unwritten = `${ROOM}2026-02-02 A1: spawned\n`;

  test('gets a number of its own, and leaves the others theirs', async () => {
    const { status, files } = await jot('--on 2026-01-05 A1: spawned', { files: { [FILE]: unwritten } });
    expect(status).toBe(0);
    expect(files[FILE]).toBe(`${unwritten}2026-01-05 A1: spawned brood Rowan-2\n`);
  });

  test('is refused where it would make another brood of one that no line names', async () => {
    const { status, err, files } = await jot('--on 2026-01-05 A1: spawned brood Rowan-1', {
      files: { [FILE]: unwritten },
    });
    expect(status).toBe(2);
    expect(files[FILE]).toBe(unwritten);
    expect(err).toContain('would be Rowan-2 and no longer Rowan-1');
    expect(err).toContain('tankside tidy --write');
  });
});

describe('standard input', () => {
  test('adds every line, each under the day above it', async () => {
    const { status, files } = await jot('', {
      input: 'Tue\nA1: all well\r\n\n14 Feb\nC1: fed "flakes"\n2026-02-02 C1: all well',
    });
    expect(status).toBe(0);
    expect(files[FILE]).toBe(`${ROOM}2026-02-10 A1: all well\n2026-02-14 C1: fed "flakes"\n2026-02-02 C1: all well\n`);
  });

  test('adds none where one cannot be read, and names each that cannot', async () => {
    const { status, err, files } = await jot('', { input: 'A1: all well\nA7: all well\nA1: chassing\n' });
    expect(status).toBe(2);
    expect(files[FILE]).toBe(ROOM);
    expect(err.match(/not saved/g)?.length).toBe(2);
  });

  test('may declare what its later lines speak of', async () => {
    const { files } = await jot('', { input: 'tank A7: 54 L; alone\nA7: all well\n' });
    expect(files[FILE]).toBe(`${ROOM}2026-02-15 tank A7: 54 L; alone\n2026-02-15 A7: all well\n`);
  });

  test('without anything in it is no use', async () => {
    expect((await jot('', { input: '\n' })).status).toBe(2);
  });
});

describe('the prompt', () => {
  test('saves line by line, and a day alone is the day of the lines after it', async () => {
    const { status, out, files } = await jot('', { typed: ['A1: chasing', 'Tue', 'A1: all well', ''] });
    expect(status).toBe(0);
    expect(files[FILE]).toBe(`${ROOM}2026-02-15 A1: chasing\n2026-02-10 A1: all well\n`);
    expect(out).toContain('10 Feb: ');
    expect(out).toContain('2 lines saved');
  });

  test('shows a bad line again with what would be read filled in', async () => {
    const { out, files } = await jot('', { typed: ['A1: chassing', '+'] });
    expect(out).toContain('[A1: chasing]');
    expect(files[FILE]).toBe(`${ROOM}2026-02-15 A1: chasing\n`);
  });

  test('offers to declare what is missing, and then the line itself again', async () => {
    const { out, files } = await jot('', { typed: ['Z7: all well', 'tank Z7: 30 L; alone', '+'] });
    expect(out).toContain('write first: 2026-02-15 tank Z7:');
    expect(out).toContain('[Z7: all well]');
    expect(files[FILE]).toBe(`${ROOM}2026-02-15 tank Z7: 30 L; alone\n2026-02-15 Z7: all well\n`);
  });

  test('says once how a line that comes back is taken or cleared', async () => {
    const { out } = await jot('', { typed: ['A1: chassing', '+', 'C1: all wel', '+'] });
    expect(out.split('Enter takes it, Ctrl-U clears it')).toHaveLength(2);
    expect(out.indexOf('Ctrl-U')).toBeLessThan(out.indexOf('[A1: chasing]'));
    expect((await jot('', { typed: ['A1: chasing'] })).out).not.toContain('Ctrl-U');
  });

  test.each(['help', ' ? '])('shows lines to write to who types «%s», and writes nothing down', async (word) => {
    const { out, files } = await jot('', { typed: [word, 'A1: chasing'] });
    expect(files[FILE]).toBe(`${ROOM}2026-02-15 A1: chasing\n`);
    const said = out.slice(0, out.indexOf('saved'));
    expect(said).toContain('  A1: eggs seen, about 80 "left cave"\n');
    for (const [line] of said.matchAll(/^ {2}[A1C]+: .*$/gm)) {
      const tried = (await jot('--dry-run', { typed: [line.trim()] })).out;
      expect(tried).toContain('would be 2026-02-15 ');
      expect(tried).not.toContain('not saved');
    }
  });

  test('keeps the line that came back for after the help', async () => {
    const { out, files } = await jot('', { typed: ['A1: chassing', 'help', '+'] });
    expect(out.split('[A1: chasing]')).toHaveLength(3);
    expect(files[FILE]).toBe(`${ROOM}2026-02-15 A1: chasing\n`);
  });

  test.each(['exit', 'Quit', 'end'])('is left by «%s» too', async (word) => {
    const { status, out, files } = await jot('', { typed: ['A1: chasing', 'C1: all wel', word, 'A1: all well'] });
    expect([status, files[FILE]]).toEqual([0, `${ROOM}2026-02-15 A1: chasing\n`]);
    expect(out).toMatch(/\n1 line saved\nnot saved: C1: all wel\n$/);
  });

  test('says which words were not saved when it is left', async () => {
    const { out, files } = await jot('', { typed: ['A1: nonsense about nothing'] });
    expect(files[FILE]).toBe(ROOM);
    expect(out).toContain('0 lines saved\nnot saved: A1: ');
  });
});

describe('a day that is asked for', () => {
  const LATE = `${ROOM}2026-02-11 A1: all well\n2026-02-10 C1: all well\n`;

  test('is the one that weekdays after it are told from, in a file and at the prompt', async () => {
    const [wed, tue] = ['A1: all well', 'C1: all well'];
    const fromFile = await jot('--on 2026-02-11', { today: '2026-03-20', input: `${wed}\nTue\n${tue}\n` });
    expect(fromFile.files[FILE]).toBe(LATE);
    const typed = await jot('--on 2026-02-11', { today: '2026-03-20', typed: [wed, 'Tue', tue, ''] });
    expect(typed.files[FILE]).toBe(LATE);
    const shell = await jot('--on 2026-02-11 Tue C1: all well', { today: '2026-03-20' });
    expect(shell.files[FILE]).toBe(`${ROOM}2026-02-10 C1: all well\n`);
  });
});

describe('a journal that cannot be written', () => {
  test('is told with exit 3', async () => {
    expect((await tankside(['jot', 'A1:', 'chasing'], {})).status).toBe(3);
  });
});
