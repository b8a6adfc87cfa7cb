/** What is offered for a line that was not read: it must state nothing that was not written, and hide nothing. */
import { describe, expect, test } from 'vitest';
import { problemsIn } from '../support/lines.ts';

function offered(clauses: string, heading = 'A1'): string {
  const date = '2026-03-10 ';
  return problemsIn(`${date}${heading}: ${clauses}`)[0]?.write.replace(date, '') ?? 'read';
}

describe('a slip of the thumb', () => {
  test.each([
    ['chasign', 'A1: chasing'],
    ['spawnd', 'A1: spawned'],
    ['amonia 0', 'A1: ammonia 0'],
    ['lights off, spawnd yesterday', 'A1: lights off, spawned yesterday'],
  ])('is mended: %s', (clauses, line) => {
    expect(offered(clauses)).toBe(line);
  });

  test.each(['hosed the return', 'salt 1 tsp', 'salt 1', 'nudged the rocks', 'bested her'])(
    'another word is none: %s',
    (clauses) => {
      expect(offered(clauses)).toBe(`A1: note ${clauses}`);
    },
  );
});

describe('a name that is not known', () => {
  test('is another tank where its digits are others', () => {
    expect(offered('moved 5 Rowan-1 to A9')).toBe('tank A9:');
    expect(offered('moved 5 Rowan7-1 to A1')).not.toContain('Rowan-1 to');
  });

  test.each([
    ['free-swimming 40ish bbs', 'A1: free-swimming 40ish "bbs"'],
    ['free-swimming 40ish Bbs', 'A1: free-swimming 40ish "Bbs"'],
    ['female chasing male all day', 'A1: female chasing male "all day"'],
    ['sold 6 tp "bob"', 'A1: note sold 6 tp "bob"'],
    ['moved 5 lookers to C1', 'A1: note moved 5 lookers to C1'],
  ])('a common word is no stock that lacks its declaration: %s', (clauses, line) => {
    expect(offered(clauses)).toBe(line);
  });

  test('a word with a capital may be one', () => {
    expect(offered('sold 6 Willow for 12.00')).toBe('group Willow: some');
    expect(problemsIn('2026-03-10 Tue A1: wc 30 %')[0]?.write).not.toContain('tank Tue');
  });
});

describe('a tank that is called by a number', () => {
  test('is named with its kind elsewhere than at the head of a line', () => {
    const set = '2026-03-01 tank 12: 54 L; alone\n2026-03-01 tank A1: 54 L; alone\n';
    const [problem] = problemsIn(`${set}2026-03-10 A1: moved 20 Rowan-1 to 12`);
    expect(problem?.write).toBe('2026-03-10 A1: moved 20 Rowan-1 to tank 12');
  });
});

describe('a jar that is called by its number', () => {
  const more = '2026-03-01 culture J2: microworm\n2026-03-01 culture J12: microworm\n';
  const written = (clauses: string, heading: string, jars = more): string =>
    problemsIn(`${jars}2026-03-10 ${heading}: ${clauses}`)[0]?.write.replace('2026-03-10 ', '') ?? 'read';
  test('is the one of that number, called as the one of the line where there are two', () => {
    expect(written('restarted from 2', 'M1')).toBe('M1: restarted from M2');
    expect(written('restarted from 2', 'J12')).toBe('J12: restarted from J2');
    expect(written('started from jar 2; harvested', 'J12')).toBe('J12: started from J2; harvested');
    expect(written('split to 12', 'M1')).toBe('M1: split to J12');
  });
  test('is kept in quotes where several are alike, or none has that number', () => {
    const three = `${more}2026-03-01 culture K3: microworm\n2026-03-01 culture L3: microworm\n`;
    expect(written('restarted from 3', 'M1', three)).toBe('M1: restarted from "3"');
    expect(written('restarted from jar 7', 'M1')).toBe('M1: restarted from "jar 7"');
    expect(written('restarted from 1', 'M1')).toBe('M1: restarted from "1"');
  });
  test('is no tank of that number, and no other number hides in quotes', () => {
    expect(written('restarted from 12', 'M1', '')).toBe('M1: restarted from "12"');
    expect(written('harvested 5', 'M1')).toBe('M1: note harvested 5');
  });
});

describe('what a clause has no place for', () => {
  test.each([
    ['eggs gone lights off', 'A1: eggs gone; lights off'],
    ['shimmying by the front', 'A1: shimmying "by the front"'],
    ['chasing, something odd', 'A1: chasing "something odd"'],
    ['paired off, culls to C1', 'A1: paired off; note culls to C1'],
    ['nearly at the rim, lights off', 'A1: lights off; note nearly at the rim'],
    ['sick "velvet", heat 30', 'A1: sick "velvet"; note heat 30'],
    ['all well 12', 'A1: note all well 12'],
  ])('%s', (clauses, line) => {
    expect(offered(clauses)).toBe(line);
  });

  test('what is missing is not made up', () => {
    expect(offered('counted')).toBe('A1: note counted');
    expect(offered('away', 'room')).toBe('room: note away');
  });

  test('a clause in the place of the heading is told of the room', () => {
    expect(problemsIn('2026-03-10 to do: buy salt')[0]?.write).toBe('2026-03-10 room: to do: buy salt');
  });
});

describe('a number of fish without its verb', () => {
  test.each([
    ['Pebble about 15', 'B1: Pebble counted about 15'],
    ['Pebble: 15-20', 'B1: Pebble counted 15-20'],
    ['Pebble only 12 left', 'B1: Pebble counted 12'],
    ['12 Pebble left', 'B1: Pebble counted 12'],
    ['fry about 15', 'B1: fry counted about 15'],
    ['still 15 fry', 'B1: counted 15 fry'],
    ['15 fry', 'B1: counted 15 fry'],
    ['water change 30 %, Pebble about 15', 'B1: water change 30 %, Pebble counted about 15'],
    ['lights off; Pebble ~15; rocks out', 'B1: lights off; Pebble counted ~15; rocks out'],
  ])('may be a count, which is offered: %s', (clauses, line) => {
    expect(offered(clauses, 'B1')).toBe(line);
  });

  test.each(['15', '2 Pebble', 'Pebble none', 'Pebble 12 quick ones', 'male 1'])(
    'may be a loss, a sale or a move, and none is: %s',
    (clauses) => {
      expect(offered(clauses, 'B1')).toBe(`B1: note ${clauses}`);
    },
  );

  test('says what it may be, and in a line of those fish alone needs no name', () => {
    expect(offered('about 15', 'Pebble')).toBe('Pebble: counted about 15');
    expect(problemsIn('2026-03-10 B1: Pebble about 15')[0]?.says).toBe(
      '«Pebble about 15» does not say what that number is of them: counted, sold, moved, or a length?',
    );
  });
});

describe('a name of several words', () => {
  const written = (line: string): readonly [string | undefined, string | undefined] => {
    const [problem] = problemsIn(`2026-03-10 ${line}`);
    return [problem?.says, problem?.write];
  };

  test.each([
    ['tank Big One: 100 L; alone', 'Big-One', 'tank Big-One: 100 L; alone'],
    ['tank Rack 3 left: 100 L; alone', 'Rack3-left', 'tank Rack3-left: 100 L; alone'],
    ['pair Moss Fern: krib; in C1', 'Moss-Fern', 'pair Moss-Fern: krib; in C1'],
    ['species red krib: cave spawner', 'red-krib', 'species red-krib: cave spawner'],
  ])('is offered as one: %s', (line, name, mended) => {
    expect(written(line)).toEqual([`a name is one word: «${name}», say`, `2026-03-10 ${mended}`]);
  });

  test('several names are several all the same', () => {
    expect(written('pair Moss and Fern: krib; in C1')[0]).toBe('one line declares one pair: write a line for each');
    expect(written('tank A1 A2: all well')).toEqual([undefined, undefined]);
    expect(written('tank A1 Z9: all well')[0]).toBe('nothing here is called «Z9»');
    expect(written('tank 30 31: all well')[0]).toBe('nothing here is called «30»');
  });
});

describe('a date in another form', () => {
  const written = (line: string): string => problemsIn(line)[0]?.write ?? 'read';

  test.each([
    ['2026-2-4 A1: all well', '2026-02-04 A1: all well'],
    ['14.2.2026 A1: all well', '2026-02-14 A1: all well'],
    ['2026-02-30 A1: all well', '2026-02-28 A1: all well'],
  ])('is mended: %s', (line, mended) => {
    expect(written(line)).toBe(mended);
  });

  test.each([
    ['2026-2-4 Z9: all well', '2026-02-04 note Z9: all well'],
    ['4/2/2026 the lid cracked', '2026-02-04 note the lid cracked'],
    ['2026-02-30 the lid cracked', '2026-02-28 note the lid cracked'],
  ])('is the day of what can only be kept as a note: %s', (line, note) => {
    expect(written(line)).toBe(note);
  });
});

describe('several tanks declared in one line', () => {
  const written = (heading: string): readonly (string | undefined)[] => {
    const [problem] = problemsIn(`2026-03-10 ${heading}: 54 L; alone`);
    return [problem?.kind, problem?.write];
  };

  test.each(['tank Z1-Z6', 'tank Z1–Z6', 'tank Z1 to Z6', 'tanks Z1-Z6', 'tanks Z1, Z2 and Z3', 'tank Z1 and Z2'])(
    'are none, and no tank of that name either: %s',
    (heading) => {
      expect(written(heading)).toEqual(['declare-one', '2026-03-10 tank Z1: 54 L; alone']);
    },
  );

  test.each(['tank Z1-6', 'tank Low-1', 'tank Z6-Z1', 'tank Left-Z2', 'tank Z1'])('one name is one: %s', (heading) => {
    expect(written(heading)).toEqual([undefined, undefined]);
  });
});

describe('what is said of another place', () => {
  test('behind a second colon is never offered for the first', () => {
    expect(offered('all well; C1: lights off')).toBe('A1: all well; note C1: lights off');
    expect(offered('lights off, C1: lights on')).toBe('A1: lights off; note C1: lights on');
  });

  test('is offered as a line of the tank that they left, where nothing else is lost by it', () => {
    expect(offered('moved 6 Rowan-1 from C1 to B1', 'B1')).toBe('C1: moved 6 Rowan-1 to B1');
    expect(offered('moved 6 Rowan-1 to B1 from C1', 'B1')).toBe('C1: moved 6 Rowan-1 to B1');
    expect(offered('moved 6 Rowan-1 from C1 to B1; lights off', 'B1')).toBe(
      'B1: lights off; note moved 6 Rowan-1 from C1 to B1',
    );
  });
});

test('a measure of unknown size is offered as the remark, and as no litres that nobody wrote', () => {
  expect(offered('water change 2 buckets', 'C1')).toBe('C1: water change "2 buckets"');
});

describe('what a culture is of', () => {
  test.each(['jar 1 started', 'new jar set up'])('is nothing that happened to it: %s', (words) => {
    const [problem] = problemsIn(`2026-03-10 culture J7: ${words}`);
    expect(problem?.kind).toBe('not-understood');
    expect(problem?.says).toContain('in a line of its own, `M1: started`');
    expect(problem?.write).toBe(`2026-03-10 note culture J7: ${words}`);
  });

  test.each(['microworm', 'Vinegar eels', 'banana worms'])('is its food: %s', (words) => {
    expect(problemsIn(`2026-03-10 culture J7: ${words}`)).toEqual([]);
  });
});

describe('the sex before the name of a pair', () => {
  test.each([
    ['male Rowan died', 'A1: Rowan male died'],
    ['the female Rowan hiding', 'A1: Rowan female hiding'],
    ['all well; male Rowan chasing, lights off', 'A1: all well; Rowan male chasing, lights off'],
  ])('is offered the other way round: %s', (clauses, line) => {
    expect(offered(clauses)).toBe(line);
  });

  test('alone says nothing of it, and before what is no pair it is left', () => {
    expect(offered('male Rowan')).toBe('A1: note male Rowan');
    expect(offered('male Willow died')).not.toContain('Willow male');
  });
});
