/** Short lines as wet hands write them: what they mean, and what is asked back where they may mean two things. */
import { describe, expect, test } from 'vitest';
import { eventsOf, problemsIn } from '../support/lines.ts';

const DAY = '2026-03-10 ';
const STOCK = `2026-02-01 pair Ivy: krib; male; female; in C2
2026-02-01 pair Teasel: krib; male; female; in Q1
`;

const facts = (line: string): unknown => eventsOf(`${DAY}${line}\n`).map(({ place: _, seq: __, ...says }) => says);
const offered = (line: string): string | undefined => problemsIn(`${DAY}${line}`)[0]?.write.replace(DAY, '');

describe('is read as meant', () => {
  test.each([
    // The two of a pair
    ['A1: both died', 'A1 pair: died all'],
    ['A1: both parents dead', 'A1 pair: died all'],
    ['A1: both to C1', 'A1: moved pair to C1'],
    ['A1: both hiding', 'A1 pair: hiding'],
    ['Rowan: both died', 'Rowan: died all'],
    ['A2: both females died', 'A2: died 2 females'],
    // Losses
    ['C1: culled 5 runts', 'C1: culled 5 "runts"'],
    ['C1: 5 runts culled', 'C1: culled 5 "runts"'],
    ['C1: culled 3 deformed', 'C1: culled 3 "deformed"'],
    ['C1: 3 culls', 'C1: culled 3'],
    ['C1: euthanised 1', 'C1: culled 1'],
    ['C1: 2 doa', 'C1: died 2'],
    ['C1: several dead', 'C1: died some'],
    ['C1: died 2 of Ash', 'C1: Ash died 2'],
    ['A1: female died overnight', 'A1: female died "overnight"'],
    // Moves
    ['C1: paired off, rest to C2', 'C1: bonded; moved the rest to C2'],
    ['C1: half to C2', 'C1: moved half to C2'],
    ['C1: moved them all to C2', 'C1: moved to C2'],
    ['C1: 6 of Ash to C2', 'C1: moved 6 Ash to C2'],
    ['C1: split 6 to C2', 'C1: moved 6 to C2'],
    ['C1: Ash split, 6 to C2, rest stay', 'C1: moved 6 Ash to C2, rest stay'],
    ['C1: transferred 6 Ash to C2', 'C1: moved 6 Ash to C2'],
    ['A1: pulled eggs to C2', 'A1: moved young to C2'],
    ['A1: moved wrigglers to C2', 'A1: moved young to C2'],
    // Eggs and young
    ['A1: layed 80 eggs', 'A1: spawned, 80 eggs'],
    ['A1: clutch of 70', 'A1: eggs seen, 70 eggs'],
    ['A1: laid, maybe 50', 'A1: spawned, about 50'],
    ['A1: laid 50 or so', 'A1: spawned, about 50'],
    ['A1: fungus on 20 eggs', 'A1: eggs white 20'],
    ['A1: lost the clutch', 'A1: eggs gone'],
    ['A1: still no eggs', 'A1: no eggs'],
    ['A1: fry swimming', 'A1: free-swimming'],
    ['A1: F/S, 40', 'A1: free-swimming, 40'],
    ['A1: tubes down', 'A1: about to spawn'],
    // Quarrels
    ['A1: f hiding in the corner', 'A1: female hiding "in the corner"'],
    ['A1: m harassing f', 'A1: male chasing female'],
    ['A1: f being chased', 'A1: chasing female'],
    ['A1: fins nipped', 'A1: torn fin'],
    ["A1: f won't eat", 'A1: female not eating'],
    ['A1: getting on again', 'A1: made up'],
    // Feeds
    ['C1: Ash fed bbs', 'C1: fed brine shrimp "Ash"'],
    ['C1: fed Ash bbs', 'C1: fed brine shrimp "Ash"'],
    ['C1: bbs to Ash', 'C1: fed brine shrimp "to Ash"'],
    ['C1: fry fed bbs', 'C1: fed brine shrimp "fry"'],
    ['C1: bbs and micros', 'C1: fed brine shrimp, microworm'],
    ['C1: bbs x2', 'C1: fed brine shrimp "x2"'],
    ['room: all fed flake', 'room: fed flake "all"'],
    ['C1: fed flake am, bbs pm', 'C1: fed flake, brine shrimp "am, pm"'],
    ['C1: fed frozen bloodworm to adults', 'C1: fed frozen bloodworm "to adults"'],
    ['A1: fed female bbs', 'A1: fed brine shrimp "female"'],
    ['room: started bbs hatch', 'room: hatch brine shrimp'],
    ['C1: flake', 'C1: fed flake'],
    // Water, heat and what breaks
    ['A1: pH: 7.2, KH: 6, NO2 <0.1', 'A1: test pH 7.2, KH 6 dH, NO2 under 0.1'],
    ['A1: pH=7.2', 'A1: test pH 7.2'],
    ['A1: temp dropped to 21', 'A1: test 21 C'],
    ['A1: nitrates 40', 'A1: test NO3 40'],
    ['C1: wc 30% RO', 'C1: water change 30 % "RO"'],
    ['C1: did wc 30%', 'C1: water change 30 %'],
    ['C1: top up 2L', 'C1: topped up 2 L'],
    ['C1: dosed 2 tsp salt', 'C1: dosed 2 tsp "salt"'],
    ['C1: raised temp to 30', 'C1: heat to 30 C'],
    ['tank C1: heated to 26 C', 'tank C1: heated 26 C'],
    ['C1: heater died, temp 21', 'C1: fault "heater died"; test 21 C'],
    ['A1: valve weeping', 'A1: fault "valve weeping"'],
    ['A1: leak at the bulkhead', 'A1: leak "at the bulkhead"'],
    ['A1: leak fixed', 'A1: fixed "leak"'],
    ['A1: valve shut', 'A1: off the loop'],
    ['A1: put divider in', 'A1: divider in'],
    ['room: blackout 2h', 'room: power off 2 h'],
    ['Long: 22 below the lip', 'Long: level 22 mm below the lip'],
    ['Long: lvl 58', 'Long: level 58 mm'],
    ['Long: rinsed 2 layers', 'Long: cleaned 2 layers'],
    ['M1: gone off', 'M1: sour'],
    ['room: set up bbs', 'room: hatch brine shrimp'],
    // Stock, sale, promises
    ['C1: hold back 8', 'C1: kept back 8'],
    ['C1: reserved 6 for Jo', 'C1: reserved 6 to "Jo"'],
    ['C1: promised 6 to Jo', 'C1: reserved 6 to "Jo"'],
    ['C1: sold 6 at 4 ea', 'C1: sold 6 at 4.00 each'],
    ['C1: sold 6, 4 each', 'C1: sold 6 at 4.00 each'],
    ['C1: sold 2 bags of 6 for 40', 'C1: sold 12 for 40.00'],
    ['C1: sold 6 from Ash for 20', 'C1: sold 6 Ash for 20.00'],
    ['C1: sold 6 to Jo friday', 'C1: sold 6 to "Jo" 2026-03-06'],
    ['C1: swapped 6 for shrimp', 'C1: gave away 6 "for shrimp"'],
    ['Q1: bought a pair of kribs for 30', 'Q1: bought 1 male, 1 female krib for 30.00'],
    ['Q1: bought a male krib for 10', 'Q1: bought 1 male krib for 10.00'],
    ['Q1: bought a trio of krib', 'Q1: bought 3 krib'],
    ['Q1: qt over', 'Q1: quarantine over'],
    ['C1: velvet?', 'C1: sick "velvet" "?"'],
    ['C1: white spot on 2', 'C1: sick "white spot" "on 2"'],
    // Sizes and counts
    ['C1: 1in', 'C1: size 1 in'],
    ['C1: 22mm TL', 'C1: size 22 mm'],
    ['C1: sexed 5 m 6 f', 'C1: counted 5 males, 6 females'],
    ['C1: counted 40 left', 'C1: counted 40'],
    ['C1: found 2 dead', 'C1: died 2'],
    ['C1: 2 more dead', 'C1: died 2'],
    ['C1: another dead', 'C1: died 1'],
    ['A1: fry fs', 'A1: free-swimming'],
    ['A1: eggs under slate, about 60', 'A1: eggs seen, about 60 "under slate"'],
    ['A1: pH down to 6.2', 'A1: test pH 6.2'],
    ['Long: added 20 L water', 'Long: topped up 20 L'],
    ['Long: level dropped to 30', 'Long: level 30 mm'],
    ['Long: cleaned 3 out of 6', 'Long: cleaned 3 of 6 layers'],
    ['Q1: bought 6x krib @ 4', 'Q1: bought 6 krib at 4.00 each'],
    ['Q1: bought 6 wild krib', 'Q1: bought 6 krib "wild"'],
    ['C1: sold last 4 for 20', 'C1: sold 4 for 20.00 "last"'],
    // Plans
    ['C1: must order salt by friday', 'C1: to do "order salt" by 2026-03-13'],
    ["room: don't forget the lids", 'room: to do "the lids"'],
  ])('«%s» is «%s»', (said, meant) => {
    expect(facts(said)).toEqual(facts(meant));
  });
});

describe('is asked back, with a line that would be read', () => {
  test.each([
    ['Q1: bought 2 pairs krib at 15', 'Q1: bought 2 pairs krib for 30.00'],
    ['Q1: bought a pair krib at 15 each', 'Q1: bought a pair krib for 15.00'],
    ['C1: sold 2 bags of 6 at 20', 'C1: sold 2 bags of 6 for 40.00'],
    ['C1: sold 6 x 4', 'C1: sold 6 at 4 each'],
    ['Q1: bought 6 krib, 24', 'Q1: bought 6 krib, for 24'],
    ['A1: paired off, culls to C2', 'A1: paired off; note culls to C2'],
    ['C1: culled the runts', 'C1: culled some runts'],
    ['C1: 2 gone', 'C1: 2 missing'],
    ['C1: 6 to C2, about 5 left', 'C1: 6 to C2; counted about 5'],
    ['C1: down to 8', 'C1: counted 8'],
    ['C2: 6 Ash from C1', 'C1: moved 6 Ash to C2'],
    ['C2: got 6 from C1', 'C1: moved 6 to C2'],
    ['C1: heater set to 28', 'C1: heat to 28'],
    ['A1: temp up to 29', 'A1: temp 29'],
    ['A1: salinity 1.005', 'A1: note salinity 1.005'],
    ['C1: size 22 mm SL', 'C1: note size 22 mm SL'],
    ['A1: pump stopped', 'A1: pump off'],
    ['A1: lip locking', 'A1: chasing'],
    ['A1: settled', 'A1: calmer'],
    ['A1: swapped male', 'A1: new male'],
    ['C1: keep 8 biggest', 'C1: kept back 8 biggest'],
    ['C1: added 2 caves', 'C1: note added 2 caves'],
    ['C1: added plants', 'C1: note added plants'],
    ['C1: salt 2 g/L', 'C1: dosed salt 2 g/L'],
    ['C1: 2 g flake', 'C1: fed 2 g flake'],
    ['C1: sell 6 to Jo friday', 'C1: to do "sell 6 to Jo friday" by 2026-03-13'],
    ['C1: move 6 to C2 tomorrow', 'C1: to do "move 6 to C2 tomorrow" by 2026-03-11'],
    ['A2: eggs from Fern', 'A2: note eggs from Fern'],
    ['A1: f hiding behind the filter lights off', 'A1: f hiding behind the filter; lights off'],
    ['C1: white spot heat to 30', 'C1: note white spot heat to 30'],
    ['A1: female swimming again', 'A1: note female swimming again'],
    ['A1: must be 40', 'A1: note must be 40'],
    ['C1: 6 Ash to C2, leaving 5', 'C1: 6 Ash to C2; counted 5'],
    ['C2: moved 6 Ash from C1', 'C1: moved 6 Ash to C2'],
    ['A1: nitrate up to 40', 'A1: nitrate 40'],
    ['A1: added female from Ash', 'A1: note added female from Ash'],
    ['C1: no bbs', 'C1: note no bbs'],
    ['C1: given flake', 'C1: note given flake'],
    ['Q1: drip acclimated 1 h', 'Q1: note drip acclimated 1 h'],
    ['Q1: dripping in RO water', 'Q1: note dripping in RO water'],
    ['A1: put down sand', 'A1: note put down sand'],
    ['A1: blackout', 'A1: lights off'],
    ['A1: heat down to 28', 'A1: heat to 28'],
    ['A1: temp back to 26', 'A1: temp 26'],
    ['A1: salinity 1.02', 'A1: note salinity 1.02'],
    ['C1: fungus on filter', 'C1: note fungus on filter'],
    ['C1: fungus on 2', 'C1: note fungus on 2'],
    ['A1: spawned in cave 2', 'A1: note spawned in cave 2'],
    ['A1: spawned from yesterday', 'A1: note spawned from yesterday'],
    ['A1: must spawn soon', 'A1: note must spawn soon'],
    ['C1: sf out', 'C1: air filter out'],
    ['C1: sold 6=24', 'C1: note sold 6=24'],
    ['Long: cleaned top layer', 'Long: note cleaned top layer'],
  ])('«%s»', (line, write) => {
    expect(offered(line)).toBe(write);
  });

  test('what is offered does not turn into its opposite, nor lose a number', () => {
    expect(offered('C1: wc due')).toBe('C1: note wc due');
    expect(offered('Long: cleaned pump')).toBe('Long: did "cleaned pump"');
    expect(offered('Long: rinsed')).toBe('Long: note rinsed');
    expect(offered('C1: not fed')).toBe('C1: note not fed');
  });

  test('no slip of the thumb makes fish sick, or kills or sells them', () => {
    expect(offered('C1: fasting')).toBe('C1: note fasting');
    expect(offered('A1: flaring')).toBe('A1: note flaring');
    expect(offered('C1: cycled')).toBe('C1: note cycled');
    expect(offered('C1: smells')).toBe('C1: note smells');
  });
});

describe('where a pair comes from', () => {
  const parents = (clauses: string): unknown => {
    const told = eventsOf(`${STOCK}${DAY}pair Oak: krib; ${clauses}; in C1\n`);
    return told
      .filter(({ day }) => day === told.at(-1)?.day)
      .flatMap((event) =>
        event.kind === 'group declared' ? [[event.parentsFrom, event.from, event.members.length]] : [],
      );
  };
  test.each([
    ['from Ivy-1 and Teasel-1', 0],
    ['from Ivy-1, Teasel-1', 0],
    ['from Ivy-1 & Teasel-1', 0],
    ['from Ivy-1 x Teasel-1', 0],
    ['male from Ivy-1; female from Teasel-1', 2],
    ['m from Ivy-1, f from Teasel-1', 2],
    ['male ex Ivy-1, female ex Teasel-1', 2],
    ['male; from Ivy-1; female; from Teasel-1', 2],
  ])('«%s» is both broods', (clauses, members) => {
    expect(parents(clauses)).toEqual([[['Ivy-1', 'Teasel-1'], null, members]]);
  });

  test('somebody with a comma stays somebody', () => {
    expect(parents('from "a friend, Ivy road"')).toEqual([[[], 'a friend, Ivy road', 0]]);
  });

  const asked = (clauses: string): unknown => problemsIn(`${STOCK}${DAY}pair Oak: krib; ${clauses}; in C1`)[0];
  test('a tank, a part that is no stock, or somebody of one fish alone is asked back', () => {
    const pair = `${DAY}pair Oak: krib; `;
    expect(asked('from A1, A2')).toMatchObject({ kind: 'wrong-kind', write: `${pair}from "A1, A2"; in C1` });
    expect(asked('from Ivy-1, a friend')).toMatchObject({ write: `${pair}from "Ivy-1, a friend"; in C1` });
    expect(asked('male from "a friend"')).toMatchObject({ kind: 'wrong-kind' });
  });

  test('no fish is called like a brood', () => {
    expect(asked('male Ivy-1')).toMatchObject({
      kind: 'name-is-brood',
      write: `${DAY}pair Oak: krib; male from Ivy-1; in C1`,
    });
  });
});
