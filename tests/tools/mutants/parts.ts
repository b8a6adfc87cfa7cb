/** What is broken, and which tests are to notice: each part is named after what the keeper would lose. */

export interface Part {
  readonly name: string;
  readonly files: readonly string[];
  readonly tests: readonly string[];
}

const named = (folder: string, names: string): string[] => names.split(' ').map((name) => `${folder}/${name}`);
const source = (folder: string, names: string): string[] => named(`src/${folder}`, names).map((name) => `${name}.ts`);
const test = (folder: string, names: string): string[] =>
  named(`tests/${folder}`, names).map((name) => `${name}.test.ts`);

export const PARTS: readonly Part[] = [
  {
    name: 'counts',
    files: source('state', 'counting recount tally ceilings heads moves places bodies losses leavers selling sizing'),
    tests: test(
      'state',
      'counting counted recounted tally moves movedwhere mixes mixbound along conserved gone who whose groups sale promisesmet broods heads places sizing',
    ),
  },
  {
    name: 'broods',
    files: source(
      'state',
      'broodstart broods broodlife broodnames spawning stageseen stageclock stagewindows hindsight when',
    ),
    tests: test(
      'state',
      'broods broodnames eggs spawned laidby stages stages.property stageclock stageseen hindsight when gone',
    ),
  },
  {
    name: 'pairs',
    files: source('state', 'disputes quarrel groups members who whichgroup meant living unclear where'),
    tests: test(
      'state',
      'disputes quarrel bouts groups groupstold members who whose whosequarrel broods movedwhere where',
    ),
  },
  {
    name: 'checks',
    files: source('checks', '*'),
    tests: test('checks', '*'),
  },
  {
    name: 'holds',
    files: [...source('questions', 'holds holds/*'), ...source('state', 'health')],
    tests: [...test('questions', 'holds/* sale'), ...test('state', 'health heldsick')],
  },
  {
    name: 'sale',
    files: source('questions', 'sale sale/* saleable promises promises/*'),
    tests: test('questions', 'sale sale/* saleable saleshare promises promises/*'),
  },
  {
    name: 'water',
    files: [
      ...source('questions', 'spill prefilter powercut water levels watch due/loops due/measures'),
      ...source('state', 'water rigging rigs faults'),
    ],
    tests: [
      ...test(
        'questions',
        'spill spilllearned overflowed readable prefilter powercut powercut/* water waterrows watched due/water*',
      ),
      ...test('questions', 'due/loops due/measures due/rigs due/pumps due/inorder'),
      ...test('state', 'water waterchange measures saidagain'),
    ],
  },
  {
    name: 'days',
    files: source('questions', 'laying stages due due/order due/postponed due/destination due/together due/dispute'),
    tests: test(
      'questions',
      'broods stagedays due due/order due/postponed due/putoff due/young due/stages due/nonefree due/destination due/together due/dispute',
    ),
  },
];
