/** A number and its unit stay in one line. */
export function unbroken(text: string): string {
  return text
    .replace(/(?:\d+ ft )?(?:\d+ )?(?:1\/2|\d+) in\b/g, (tape) => tape.replaceAll(' ', '\u00a0'))
    .replace(/(\d) (m|ft|Hz|dB|dBFS|s|%|kPa|psi|bar|MB|min|mL|mm|J)(?![\w-])/g, '$1\u00a0$2')
}
