/** A line that puts off what no row is called: it is said at once, with what there is; one that hits a row is not. */
import { describe, expect, it } from 'vitest';
import { nothingPutOff } from '../../../src/questions/due/nothing-put-off.ts';
import { foldRoom } from '../../../src/state/fold.ts';
import { day } from '../../support/events.ts';
import { readLines } from '../../support/lines.ts';

const SET = '2026-02-01 C1: water change 30 % every 7 days\n2026-02-10 A1: lights off\n2026-02-10 A2: lights off\n';

/** What is said of the last line, and what it should be: `says → write`. */
function told(line: string, on = '2026-02-20', set = SET): string[] {
  const { events, problems } = readLines(`${set}2026-02-20 ${line}\n`);
  expect(problems).toEqual([]);
  const room = foldRoom(events, day(on));
  return nothingPutOff(room, events).map(({ kind, weight, says, write, also }) => {
    expect([kind, weight, also]).toEqual(['nothing-put-off', 'doubt', []]);
    return `${says} → ${write}`;
  });
}

describe('a line that puts off', () => {
  it.each([
    'C1: put off water change until 2026-02-27',
    'A1: put off lights on until 2026-02-27',
    'A1 A2: put off lights off until 2026-02-27',
    // Of several tanks any may have such a row.
    'A1 C2: put off lights off until 2026-02-27',
    'all tanks: put off lights off until 2026-02-27',
    'room: put off silence until 2026-02-27',
  ])('a row of that name there is right: «%s»', (line) => {
    expect(told(line)).toEqual([]);
  });
  it('what is due only before its day is right, and what comes later is not on the list yet', () => {
    const monthly = '2026-02-19 C2: water change 30 % every 60 days\n';
    expect(told('C2: put off water change until 2026-02-27', '2026-02-20', monthly)).toHaveLength(1);
    expect(told('C2: put off water change until 2026-05-01', '2026-02-20', monthly)).toEqual([]);
  });
  it('until a day that is over hides nothing, and is let be', () => {
    expect(told('A1: put off water chnage until 2026-02-27', '2026-02-27')).toEqual([]);
    expect(told('A1: put off water chnage until 2026-02-27', '2026-02-26')).toHaveLength(1);
  });
  it('is offered the nearest name there', () => {
    expect(told('A1: put off "light of" until 2026-02-27')).toEqual([
      'nothing on the list of A1 is called «light of», so nothing is put off → A1: put off lights off until 2026-02-27',
    ]);
    expect(told('C1: put off "the water change" until 2026-02-27')).toEqual([
      'nothing on the list of C1 is called «the water change», so nothing is put off → C1: put off water change until 2026-02-27',
    ]);
    expect(told('A1: put off "lights" until 2026-02-27')[0]).toMatch(/→ A1: put off lights off until 2026-02-27$/);
  });
  it('is offered the place that has a row of that name, all tanks where several have', () => {
    expect(told('C2: put off water change until 2026-02-27')).toEqual([
      'nothing on the list of C2 is called «water change», so nothing is put off → C1: put off water change until 2026-02-27',
    ]);
    expect(told('room: put off lights off until 2026-02-27')[0]).toMatch(
      /→ all tanks: put off lights off until 2026-02-27$/,
    );
    expect(told('C2: put off lights off until 2026-02-27')[0]).toMatch(/→ A1: put off lights off until 2026-02-27$/);
  });
  it('is told what is on the list there, or to ask for it', () => {
    expect(told('C1: put off "polish glass" until 2026-02-27')).toEqual([
      'nothing on the list of C1 is called «polish glass», so nothing is put off; on it: «water change» → C1: put off water change until 2026-02-27',
    ]);
    expect(told('C2: put off "polish glass" until 2026-02-27')).toEqual([
      'nothing on the list of C2 is called «polish glass», so nothing is put off → the name of a row of tankside due, if one was meant',
    ]);
  });
  it('names a row in quotes where its words hold more than letters', () => {
    const task = '2026-02-01 C1: to do "lid; new hinge (left)"\n';
    const [said] = told('C1: put off "hinge" until 2026-02-27', '2026-02-20', task);
    expect(said).toMatch(/→ C1: put off "lid; new hinge \(left\)" until 2026-02-27$/);
    expect(told('C1: put off "lid; new hinge (left)" until 2026-02-27', '2026-02-20', task)).toEqual([]);
  });
});
