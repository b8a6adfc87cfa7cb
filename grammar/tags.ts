/** Token types that tagging deals out: what a word turned out to be. None has a pattern of its own. */
import type { TokenType } from 'chevrotain';
import { tagged } from './tokens.ts';

export const Fuzz = tagged('Fuzz', '`about`');
export const CountWord = tagged('CountWord', 'a number');
export const NumberWord = tagged('NumberWord', 'a number');
export const RangeTo = tagged('RangeTo', '`to`');
export const Ago = tagged('Ago', '`ago`');
export const Noun = tagged('Noun', 'what is counted');
export const Scoop = tagged('Scoop', 'a measure of your own');
export const Sex = tagged('Sex', '`male` or `female`');
export const The = tagged('The', '`the`');
export const Name = tagged('Name', 'a name');
export const TankWord = tagged('TankWord', '`tank`');
export const Doer = tagged('Doer', 'who chases');
export const OnWhom = tagged('OnWhom', '`on`');
export const Sufferer = tagged('Sufferer', 'who is chased');
export const DayWords = tagged('DayWords', 'a date');
export const Every = tagged('Every', '`every`');
export const Period = tagged('Period', '`day`, `week` or `month`');
export const Often = tagged('Often', '`daily`');
export const Room = tagged('Room', '`room`');
export const Declaring = tagged('Declaring', 'what is declared');
export const AllTanks = tagged('AllTanks', '`all tanks`');
export const Tanks = tagged('Tanks', '`tanks`');
export const Except = tagged('Except', '`except`');
export const GroupWord = tagged('GroupWord', '`pair`');
export const And = tagged('And', '`and`');
export const Action = tagged('Action', 'a chore');
export const Rig = tagged('Rig', 'a temporary measure');
export const Text = tagged('Text', 'words');
export const Separator = tagged('Separator', 'the next clause');
export const Mistake = tagged('Mistake', '`mistake`');

/** All of them. */
export const TAGS: readonly TokenType[] = [
  Fuzz,
  CountWord,
  NumberWord,
  RangeTo,
  Ago,
  Noun,
  Scoop,
  Sex,
  The,
  Name,
  TankWord,
  Doer,
  OnWhom,
  Sufferer,
  DayWords,
  Every,
  Period,
  Often,
  Room,
  Declaring,
  AllTanks,
  Tanks,
  Except,
  GroupWord,
  And,
  Action,
  Rig,
  Text,
  Separator,
  Mistake,
];
