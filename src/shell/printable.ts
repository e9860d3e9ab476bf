/**
 * Text for a terminal, with its control characters made visible: a file or its name may hold sequences that clear the
 * screen or rename the window. Line ends and tabs stay.
 *
 * @example printable('a\u001b[2Jb') // 'a␛[2Jb'
 */
export function printable(text: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is looked for
  return text.replace(/[\u0000-\u0008\u000b-\u001f\u007f-\u009f]/g, (character) => {
    const code = character.charCodeAt(0);
    return code < 0x20 ? String.fromCharCode(0x2400 + code) : code === 0x7f ? '␡' : '\ufffd';
  });
}
