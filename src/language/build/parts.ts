/** Clauses of a declaring line: each fills its part of the one fact that the line declares. */
import type { ClauseKind } from '../../../grammar/phrases.ts';
import { GUILDS } from '../../core/guild.ts';
import type { Measure } from '../../core/quantity.ts';
import type { Clause } from '../clause.ts';
import { LOOP, TANK } from '../line.ts';
import { linkedMeasure } from './amounts.ts';
import type { AuctionDraft, CultureDraft, Draft, LoopDraft, RowDraft, SpeciesDraft, TankDraft } from './declaring.ts';
import { GROUP_PARTS } from './groups.ts';
import { food } from './feeding.ts';
import { placesOf, tankName } from './places.ts';
import { figureValue } from '../quantities.ts';

type Part<D> = (clause: Clause, draft: D) => void;
type Parts<D> = Readonly<Partial<Record<ClauseKind, Part<D>>>>;

/** Fills a draft with what a clause says; false where the clause is none of a declaration. */
export function fillDraft(clause: Clause, draft: Draft): boolean {
  switch (draft.kind) {
    case 'tank declared':
      return isTankPart(clause) && fill(TANK_PARTS, clause, draft);
    case 'loop declared':
      return fill(LOOP_PARTS, clause, draft);
    case 'row declared':
      return fill(ROW_PARTS, clause, draft);
    case 'species declared':
      return fill(SPECIES_PARTS, clause, draft);
    case 'group declared':
      return fill(GROUP_PARTS, clause, draft);
    case 'culture declared':
      return fill(CULTURE_PARTS, clause, draft);
    case 'auction declared':
      return fill(AUCTION_PARTS, clause, draft);
    default:
      return false;
  }
}

function fill<D>(parts: Parts<D>, clause: Clause, draft: D): boolean {
  const part = parts[clause.node.kind];
  part?.(clause, draft);
  return part !== undefined;
}

/** `quarantine` alone is what the tank is for; with a length of time it has begun. */
function isTankPart(clause: Clause): boolean {
  if (clause.node.kind !== 'quarantine') return true;
  return clause.sense === 'begun' && clause.rest.every((detail) => detail.type === 'quote');
}

const LOOP_PARTS: Parts<LoopDraft> = {
  sump: (clause, draft) => (draft.sump = clause.need('L', '240 L')),
  return: (clause, draft) => (draft.returnFlow = clause.need('L/h', '3200 L/h')),
  prefilter: (clause, draft) => {
    const node = clause.quantity();
    clause.flag('layers');
    if (node === null) clause.missing('how many layers', '6 layers');
    else draft.layers = clause.whole(node);
  },
  spill: (clause, draft) => (draft.spillsAt = clause.need('mm', '80 mm')),
  spare: (clause, draft) => (draft.spare = clause.need('L', '60 L')),
};

const ROW_PARTS: Parts<RowDraft> = {
  'tanks of a row': (clause, draft) => (draft.tanks = [...draft.tanks, ...placesOf(clause)]),
};

const TANK_PARTS: Parts<TankDraft> = {
  'tank size': tankSize,
  'live volume': (clause, draft) => (draft.live = clause.need('L', '130 L')),
  'on loop': (clause, draft) => {
    const name = clause.name();
    if (name === null) clause.missing('a loop', 'Long');
    else draft.plumbing = { on: clause.named(name, LOOP) };
  },
  alone: (_, draft) => (draft.plumbing = 'alone'),
  'sponge filter': (clause, draft) => (draft.filter = spongesOf(clause)),
  filter: (clause, draft) => (draft.filter = clause.needText('"canister"')),
  'hangs in': (clause, draft) => {
    const name = tankName(clause);
    if (name === null) clause.missing('a tank', 'A1');
    else draft.inTank = clause.named(name, TANK);
  },
  heated: (clause, draft) => (draft.heated = linkedMeasure(clause, 'heatTo', 'C') ?? clause.need('C', '26 C')),
  hides: (clause, draft) =>
    (draft.hides = clause.sense === 'named' ? clause.phrase().toLowerCase() : clause.needText('"two caves"')),
  'quarantine tank': (_, draft) => (draft.quarantine = true),
  quarantine: (_, draft) => (draft.quarantine = true),
};

/** `sponge filter`, or several: one of two that is rinsed leaves the other alive, so their number is kept. */
function spongesOf(clause: Clause): string {
  const [figure] = clause.quantity()?.numbers ?? [];
  const many = figure === undefined ? null : figureValue(figure);
  if (clause.sense !== 'sponge filter') return clause.sense;
  if (many !== null && many > 1) return `${String(many)} sponge filters`;
  return many === null && /s$/iu.test(clause.phrase()) ? 'sponge filters' : clause.sense;
}

/** `100 x 40 x 40 cm`, or `54 L`. */
function tankSize(clause: Clause, draft: TankDraft): void {
  if (clause.flag('alone')) draft.plumbing = 'alone';
  const node = clause.quantity();
  if (node === null) return;
  const [length, width, height] = node.numbers.map((figure) =>
    node.numbers.length === 3 ? clause.toMeasure({ ...node, numbers: [figure], high: null }, 'mm', 'edge') : null,
  );
  if (length && width && height) draft.size = [length, width, height];
  else if (node.numbers.length === 1) draft[clause.flag('live') ? 'live' : 'nominal'] = clause.toMeasure(node, 'L');
  else if (node.numbers.length !== 3) {
    clause.fault('no-size', node, `«${clause.written(node)}»: a tank has length, width and height`);
  }
  // `90x45x45, about 160 L real`
  const real = draft.live === null && clause.rest.some((detail) => detail.type === 'link' && detail.link === 'live');
  const live = real ? clause.maybe('L') : null;
  if (live !== null && clause.flag('live')) draft.live = live;
}

const CULTURE_PARTS: Parts<CultureDraft> = {
  // A phone begins it with a capital; foods are common words.
  'culture of': (clause, draft) => {
    const text = clause.needText('microworm');
    if (HAPPENED.test(text)) {
      const says = `«${text}» is no food that lives in it: what happened to a culture stands in a line of its own, \`M1: started\``;
      clause.fault('not-understood', clause.node, says);
    }
    draft.of = food(uncapital(text));
  },
};

/** `culture M1: started`, `jar 2 split`: something that was done, and not what the culture is of. */
const HAPPENED = /(?<!\p{L})(?:re)?(?:started|harvested|split|divided|soured?|crashed|fed|set up)$/iu;

function uncapital(text: string): string {
  return /^\p{Lu}\p{Ll}/u.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;
}

const AUCTION_PARTS: Parts<AuctionDraft> = {
  'auction day': (clause, draft) => {
    const date = clause.take((detail): detail is typeof detail & { type: 'date' } => detail.type === 'date');
    if (date === null) clause.missing('a date', '2026-09-05');
    else draft.on = clause.toDay(date, 'ahead');
  },
  lots: (clause, draft) => {
    const node = clause.quantity();
    if (node === null) return clause.missing('a number', '20');
    if (clause.flag('perSpecies')) draft.bagsPerSpecies = clause.whole(node);
    else draft.lots = clause.whole(node);
  },
  'bags of': (clause, draft) => {
    const node = clause.quantity();
    if (node === null) clause.missing('a number', '6');
    else draft.bagOf = clause.whole(node);
  },
  'seller gets': (clause, draft) => (draft.sellerShare = clause.need('share', '70 %')),
  fast: (clause, draft) => (draft.fast = clause.need('days', '2 days')),
  minimum: (clause, draft) => (draft.minimum = clause.money(clause.quantity())),
  travel: (clause, draft) => (draft.hours = clause.need('minutes', '5 h')),
  boxes: (clause, draft) => {
    const node = clause.quantity((each) => each.unit === null);
    const of = clause.linked('of')?.value ?? null;
    if (node === null) return clause.missing('how many', '2');
    draft.boxes = clause.whole(node);
    if (of?.type === 'quantity') draft.boxLitres = clause.toMeasure(of, 'L');
  },
};

/** `egg layer` is how fish breed, and no Latin name; of which the usual is known says one of the guilds. */
function noBreeding(clause: Clause, text: string): void {
  // `priced at 8`, `grows to 80 mm`: of a name no number is a length, an age or money.
  if (/(?<!\p{L})(?:at|to|from|for)\s+\d|\d\s*(?:mm|cm|in|weeks?|months?|days?|%)(?!\p{L})/iu.test(text))
    return clause.fault('not-understood', clause.node, `«${text}» is no Latin name`);
  if (!BREEDING.test(text)) return;
  const [first = ''] = text.toLowerCase().split(/[\s-]/u);
  // Eggs are laid by most of them.
  const near = first === 'egg' ? null : (GUILDS.find((guild) => guild.startsWith(first)) ?? null);
  const says = `«${text}» is no Latin name; how they breed is one of ${GUILDS.map((guild) => `\`${guild}\``).join(', ')}`;
  clause.fault('not-understood', clause.node, says, near);
}

const BREEDING =
  /(?<!\p{L})(?:\p{L}*(?:spawner|breeder|brooder|bearer)|(?:egg\s?)?layer|scatterer|depositor|dweller|(?:nest|bubble\s?nest)\s?builder|nester)s?$/iu;

const SPECIES_PARTS: Parts<SpeciesDraft> = {
  latin: (clause, draft) => {
    draft.traits.latin = clause.needText('Genus species');
    noBreeding(clause, draft.traits.latin);
  },
  guild: (clause, { traits }) => (traits.guild = GUILDS.find((guild) => guild === clause.sense) ?? null),
  'sale at': saleAt,
  price: (clause, { traits }) => {
    const node = clause.quantity();
    clause.flag('each');
    if (node === null) return clause.missing('an amount', '6.00');
    const amount = clause.money(node);
    if (amount !== null) traits.price = { amount, per: 'each' };
  },
  trait: (clause, { traits }) => {
    const holds = !clause.phrase().toLowerCase().startsWith('not ');
    if (clause.sense === 'sibling-safe') traits.siblingSafe = holds;
    else if (clause.sense === 'hard to catch') traits.hardToCatch = holds;
    else if (clause.sense === 'spiny') traits.spiny = holds;
    else traits.regulated = holds;
  },
  adult: (clause, { traits }) => (traits.adult = clause.need('mm', '80 mm')),
  'kept in water': (clause, { traits }) => {
    traits.temperature = linkedMeasure(clause, 'temperature', 'C') ?? clause.maybe('C', true) ?? traits.temperature;
    traits.ph = linkedMeasure(clause, 'pH', 'pH') ?? traits.ph;
    traits.gh = linkedMeasure(clause, 'GH', 'dH') ?? traits.gh;
  },
};

/** `sale at 35 mm or 16 weeks`; `and` asks for both. */
function saleAt(clause: Clause, { traits }: SpeciesDraft): void {
  const both = clause.flag('and');
  clause.flag('or');
  const inUnits: Measure<'mm'> | null = clause.maybe('mm');
  const age: Measure<'days'> | null = clause.maybe('days');
  const size = inUnits ?? clause.maybe('mm', true);
  if (size === null && age === null) clause.missing('a size or an age', '35 mm');
  else if (both && (size === null || age === null))
    clause.missing('the other condition', size === null ? '35 mm' : '16 weeks');
  traits.saleAt = { size, age, both };
}
