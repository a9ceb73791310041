import { InputError } from '@halfhitch/core';

/** What the system's reasons mean to a person, and what to do about them. */
const READING: Readonly<Record<string, readonly [string, string]>> = {
  ENOENT: ['There is no such file.', 'Check the name and the folder.'],
  ENOTDIR: ['There is no such file.', 'Check the name: a part of it is no folder.'],
  EISDIR: ['This is a folder.', 'Name a file in it.'],
  EACCES: ['The file may not be read.', 'Ask for permission to read it.'],
  EPERM: ['The file may not be read.', 'Ask for permission to read it.'],
  ENAMETOOLONG: ['The name is too long.', 'Check the name.'],
  ELOOP: ['The name leads round in a circle of links.', 'Name the file itself.'],
  EMFILE: ['Too many files are open.', 'Close other programs and try again.'],
};

const WRITING: Readonly<Record<string, readonly [string, string]>> = {
  ENOENT: ['The folder does not exist.', 'Make it first, or name another place.'],
  ENOTDIR: ['A part of the name is no folder.', 'Check the name.'],
  EISDIR: ['This is a folder.', 'Name the file to write in it.'],
  EACCES: ['It may not be written here.', 'Name a place you may write to.'],
  EPERM: ['It may not be written here.', 'Name a place you may write to.'],
  EROFS: ['Nothing can be written here.', 'Name a place you may write to.'],
  ENOSPC: ['There is no room left.', 'Make room, or name another place.'],
  EDQUOT: ['There is no room left.', 'Make room, or name another place.'],
  EFBIG: ['The file becomes too large for this place.', 'Name another place.'],
  ENAMETOOLONG: ['The name is too long.', 'Choose a shorter one.'],
};

/** A system's error as an error in the input; others are handed on as they are. */
export function systemError(error: unknown, file: string, doing: 'reading' | 'writing'): unknown {
  const code = (error as NodeJS.ErrnoException | null)?.code;
  if (typeof code !== 'string' || error instanceof InputError) return error;
  const known = (doing === 'reading' ? READING : WRITING)[code];
  const [what, remedy] = known ?? [
    `The system refuses ${doing} it (${code}).`,
    'Try another place, or look at the disk.',
  ];
  return new InputError(`${doing}-failed`, what, { file }, remedy);
}
