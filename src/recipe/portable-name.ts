/** Names that Windows keeps for devices, with any ending. Source: Microsoft, "Naming Files, Paths, and Namespaces". */
const DEVICE = /^(?:con|prn|aux|nul|(?:com|lpt)[0-9¹²³]|conin\$|conout\$)$/i;

/** Signs that no file name of Windows holds. Same source. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are among them
const SIGNS = /[<>:"|?*\\\u0000-\u001f]/;

/** Whether Windows takes a name for a device, so that it can hold no file and no folder of it: `con`, `aux.md`. */
export function isDeviceName(name: string): boolean {
  return DEVICE.test(name.split('.', 1)[0]!.trimEnd());
}

/** Why a file or folder of a name cannot lie on a disk of Windows, as the end of a sentence; undefined where it can. */
export function unportable(name: string): string | undefined {
  if (isDeviceName(name)) return 'Windows keeps that name for a device, whatever its ending';
  if (SIGNS.test(name)) return `no file name of Windows holds one of < > : " | ? * \\`;
  return /[. ]$/.test(name) ? 'Windows drops a full stop or a space at the end of a name' : undefined;
}

/** A name as disks of Windows and macOS compare it: without regard to capitals, and to how an accent is written. */
export function comparableName(name: string): string {
  return name.normalize('NFC').toLowerCase();
}
