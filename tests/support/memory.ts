/**
 * A disk in memory behind the same port as the real one: files, folders and links in a Map, errors with
 * the system's names. What a test breaks on it, it breaks in the code that runs in earnest.
 */
import path from 'node:path';
import type { Disk, Facts } from '../../src/files/disk.ts';
import type { Machine } from '../../src/files/machine.ts';

interface Node {
  bytes: Buffer;
  readonly inode: bigint;
  mode: number;
  changed: bigint;
}

/** An error as the system throws it. */
export function systemError(code: string): Error {
  return Object.assign(new Error(`${code}: as the test wants`), { code });
}

export class MemoryDisk implements Disk {
  readonly nodes = new Map<string, Node>();
  readonly links = new Map<string, string>();
  readonly #open = new Map<number, { node: Node | null; path: string }>();
  /** How many bytes all files together may hold. */
  room = Infinity;
  #last = 10;
  #clock = 0n;

  /** Text of every file. */
  texts(): Record<string, string> {
    return Object.fromEntries([...this.nodes].map(([name, node]) => [name, node.bytes.toString()]));
  }

  put(name: string, content: string | Buffer, mode = 0o644): void {
    this.nodes.set(name, this.#make(Buffer.from(content), mode));
  }

  text(name: string): string | null {
    return this.nodes.get(name)?.bytes.toString() ?? null;
  }

  open(name: string, flags: number, mode: number): number {
    const real = this.real(name, (flags & 0o100) !== 0);
    const known = this.nodes.get(real);
    if ((flags & 0o100) !== 0) {
      if (known !== undefined) throw systemError('EEXIST');
      this.nodes.set(real, this.#make(Buffer.alloc(0), mode));
    } else if (known === undefined && !this.#isFolder(real)) throw systemError('ENOENT');
    else if (known === undefined && (flags & 3) !== 0) throw systemError('EISDIR');
    else if (known !== undefined && (flags & 3) !== 0 && (known.mode & 0o200) === 0) throw systemError('EACCES');
    this.#last += 1;
    this.#open.set(this.#last, { node: this.nodes.get(real) ?? null, path: real });
    return this.#last;
  }

  close(file: number): void {
    if (!this.#open.delete(file)) throw systemError('EBADF');
  }

  read(file: number, into: Uint8Array, position: number): number {
    const { bytes } = this.#node(file);
    const part = bytes.subarray(Math.min(position, bytes.length), position + into.length);
    into.set(part);
    return part.length;
  }

  write(file: number, bytes: Uint8Array): number {
    const node = this.#node(file);
    const held = [...this.nodes.values()].reduce((sum, each) => sum + each.bytes.length, 0);
    const fits = Math.min(bytes.length, this.room - held);
    if (fits <= 0) throw systemError('ENOSPC');
    node.bytes = Buffer.concat([node.bytes, bytes.subarray(0, fits)]);
    this.#touch(node);
    return fits;
  }

  truncate(file: number, size: number): void {
    const node = this.#node(file);
    node.bytes = node.bytes.subarray(0, size);
    this.#touch(node);
  }

  sync(file: number): void {
    if (!this.#open.has(file)) throw systemError('EBADF');
  }

  factsOf(file: number): Facts {
    const { node } = this.#open.get(file) ?? { node: null };
    return this.#facts(node);
  }

  facts(name: string): Facts {
    const real = this.real(name);
    return this.#facts(this.nodes.get(real) ?? null);
  }

  setMode(file: number, mode: number): void {
    this.#node(file).mode = mode;
  }

  setOwner(file: number): void {
    this.#node(file);
  }

  link(from: string, to: string): void {
    const node = this.nodes.get(from);
    if (node === undefined) throw systemError('ENOENT');
    if (this.nodes.has(to) || this.#isFolder(to)) throw systemError('EEXIST');
    this.nodes.set(to, node);
  }

  rename(from: string, to: string): void {
    const node = this.nodes.get(from);
    if (node === undefined) throw systemError('ENOENT');
    this.nodes.delete(from);
    this.nodes.set(to, node);
  }

  remove(name: string): void {
    if (!this.nodes.delete(name)) throw systemError('ENOENT');
  }

  list(folder: string): readonly string[] {
    return [...this.nodes.keys()].filter((name) => path.dirname(name) === folder).map((name) => path.basename(name));
  }

  named(name: string): void {
    if (!this.nodes.has(name) && !this.links.has(name) && !this.#isFolder(name)) throw systemError('ENOENT');
  }

  real(name: string, mayLack = false): string {
    const real = this.links.get(name) ?? name;
    if (!mayLack && !this.nodes.has(real) && !this.#isFolder(real)) throw systemError('ENOENT');
    return real;
  }

  #make(bytes: Buffer, mode: number): Node {
    this.#last += 1;
    const node = { bytes, inode: BigInt(this.#last), mode, changed: 0n };
    this.#touch(node);
    return node;
  }

  #touch(node: Node): void {
    this.#clock += 1n;
    node.changed = this.#clock;
  }

  #node(file: number): Node {
    const node = this.#open.get(file)?.node;
    if (node === undefined) throw systemError('EBADF');
    if (node === null) throw systemError('EISDIR');
    return node;
  }

  #isFolder(name: string): boolean {
    return [...this.nodes.keys()].some((each) => each.startsWith(name.endsWith('/') ? name : `${name}/`));
  }

  #facts(node: Node | null): Facts {
    const { inode, changed, mode } = node ?? { inode: 1n, changed: 0n, mode: 0o755 };
    const size = node?.bytes.length ?? 0;
    const kind = node === null ? 'folder' : 'file';
    return { kind, device: 1n, inode, size, changed, modified: changed, mode, owner: 0, group: 0 };
  }
}

let made = 0;

/** A machine of one process, on which time passes at once. */
export function aloneMachine(): Machine {
  return {
    me() {
      made += 1;
      return {
        pid: 7,
        start: '1',
        boot: 'b',
        space: 's',
        host: 'here',
        since: 0,
        nonce: `nonce${'0'.repeat(4)}${made}`,
      };
    },
    fate: () => 'lives',
    pause: () => undefined,
  };
}
