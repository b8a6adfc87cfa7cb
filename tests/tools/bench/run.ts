/** Runs a command side by side with others: time and memory of whole processes, as medians of ratios within a round. */
import { spawnSync } from 'node:child_process';

export interface Command {
  readonly argv: readonly string[];
  /** Where answers are remembered; null: nowhere. */
  readonly cache: string | null;
  /** Puts the files as they have to be, outside the time measured. */
  readonly before?: () => void;
}

export class Runner {
  private readonly home: string;

  constructor(home: string) {
    this.home = home;
  }

  private run({ argv, cache }: Command): string {
    // Variables of the outside world change Node's own start, so both sides run without them.
    const env = { PATH: process.env['PATH'] ?? '', HOME: this.home, TANKSIDE_CACHE: cache ?? 'off' };
    const done = spawnSync(process.execPath, argv, { env, stdio: ['ignore', 'ignore', 'pipe'] });
    const told = done.stderr.toString();
    if (done.status !== 0) throw new Error(`${argv.join(' ')} ended with ${done.status}: ${told.slice(0, 400)}`);
    return told;
  }

  milliseconds(command: Command): number {
    command.before?.();
    const start = process.hrtime.bigint();
    this.run(command);
    return Number(process.hrtime.bigint() - start) / 1e6;
  }

  /** The most memory held, bytes; `peak` is a script that tells it when the process ends. */
  memory(command: Command, peak: string): number {
    const told = this.run({ ...command, argv: ['-r', peak, ...command.argv] });
    return Number(/PEAK (\d+)/.exec(told)?.[1] ?? Number.NaN) * 1024;
  }
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}

/** Times of every command in turn, round after round; one more before them that does not count. */
export class Rounds {
  private readonly rounds: ReadonlyMap<string, number>[] = [];

  constructor(runner: Runner, commands: ReadonlyMap<string, Command>, rounds: number) {
    for (const command of commands.values()) runner.milliseconds(command);
    for (let round = 0; round < rounds; round += 1) {
      this.rounds.push(new Map([...commands].map(([name, command]) => [name, runner.milliseconds(command)])));
    }
  }

  milliseconds(name: string): number {
    return median(this.rounds.map((round) => round.get(name) ?? Number.NaN));
  }

  /** How many times as long as another, in the same round. */
  ratio(name: string, base: string): number {
    return median(this.rounds.map((round) => (round.get(name) ?? Number.NaN) / (round.get(base) ?? Number.NaN)));
  }

  /** How many times as much beyond the start of the engine. */
  beyond(name: string, base: string, start: string): number {
    const more = (round: ReadonlyMap<string, number>, of: string): number =>
      (round.get(of) ?? Number.NaN) - (round.get(start) ?? Number.NaN);
    return median(this.rounds.map((round) => more(round, name) / more(round, base)));
  }
}
