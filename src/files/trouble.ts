/** What the file system refused, in words for people. */

/** The system's name for an error (`ENOENT`), or null where it is no error of the file system. */
export function codeOf(error: unknown): string | null {
  return error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : null;
}

const PLAIN: Readonly<Record<string, string>> = {
  ENOENT: 'it is not there',
  EACCES: 'you have no right to',
  EPERM: 'the system does not allow it',
  EROFS: 'that disk can only be read',
  ENOSPC: 'the disk is full',
  EDQUOT: 'your share of the disk is full',
  EFBIG: 'the file would grow beyond what the system allows',
  EIO: 'the disk reports a fault',
  EISDIR: 'it is a folder',
  ENOTDIR: 'part of the path is no folder',
  ELOOP: 'its links lead in a circle',
  ENAMETOOLONG: 'the name is too long',
  EMFILE: 'too many files are open',
  ENFILE: 'too many files are open',
  EBUSY: 'it is in use',
  ETXTBSY: 'it is in use',
  ENXIO: 'it is no plain file',
};

/** Why something did not work, as the end of a sentence: `the disk is full`. */
export function reason(error: unknown): string {
  const code = codeOf(error);
  const plain = code === null ? undefined : PLAIN[code];
  if (plain !== undefined) return plain;
  return error instanceof Error ? error.message : String(error);
}

/** Runs something that may fail without harm; gives why it did, or null. */
export function quietly(run: () => void): string | null {
  try {
    run();
    return null;
  } catch (error) {
    return reason(error);
  }
}
