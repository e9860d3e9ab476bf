import { Refusal } from '../diagnostics/refusal.ts';
import { systemCode } from './effects.ts';

/** Why a system will not write, and what helps; the last site stays as it was. */
const REASONS: Readonly<Record<string, (folder: string) => string>> = {
  EROFS: (folder) => `${folder} cannot be written, since its disk is read-only. Name a folder elsewhere with --output.`,
  EACCES: (folder) => `You may not write to ${folder}. Give yourself permission, or name another folder with --output.`,
  EPERM: (folder) => `You may not write to ${folder}. Give yourself permission, or name another folder with --output.`,
  ENOSPC: (folder) =>
    `The disk of ${folder} is full. The last site stays as it was; make room, and do this again, or name another folder with --output.`,
  EDQUOT: (folder) =>
    `You have used up your share of the disk of ${folder}. The last site stays as it was; make room, and do this again, or name another folder with --output.`,
  EXDEV: (folder) => `Part of ${folder} lies on another disk. Name a folder with --output that lies on one disk.`,
  ENOTDIR: (folder) => `${folder} lies in something that is a file. Name another folder with --output.`,
  ENAMETOOLONG: (folder) =>
    `${folder} is too long a name for its disk. Name a folder with a shorter path with --output.`,
  ELOOP: (folder) => `${folder} is a link that leads back to itself. Name another folder with --output.`,
};

/** Does something with a folder; where the system will not, the reason and the cure are said. */
export async function withReason<T>(folder: string, act: () => Promise<T>): Promise<T> {
  try {
    return await act();
  } catch (error) {
    const reason = REASONS[systemCode(error) ?? ''];
    if (!reason) throw error;
    throw new Refusal(reason(folder), { cause: error });
  }
}
