/** Cautions of rows about water, pipes and power: one line each, printed once an answer. */
export const CAUTION = {
  pump: 'cut the power before hands go in; drip loops on every cable',
  tap: 'tap water: no chlorine or chloramine, same temperature; a litre weighs a kilogram; never start a siphon by mouth',
  largeChange: 'heater off before a large change, on again when covered; large changes in daily steps',
  wetFloor:
    'wet floor: cut the power from a dry place first, water off the floor, residual-current protection; an electrician for the rest',
  power: 'a generator never runs indoors; air first: battery pump, surface stirred, no feed',
  heater: 'cut its power before hands go in; cool slowly, more air: warm water holds less oxygen',
  freshFilter: 'a fresh air filter is not mature for 2 to 6 weeks: little feed, test ammonia',
  ammonia: 'what raises pH makes more of it toxic: test again after every change or dose',
  chlorine: 'free-chlorine kits miss chloramine',
  warm: 'warm water holds less oxygen: more air, and back down a degree or two a day',
} as const;
