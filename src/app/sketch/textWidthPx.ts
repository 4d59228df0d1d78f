let pen: CanvasRenderingContext2D | null = null

/** Width of letters as the page paints them, px; half an em a letter where the browser cannot tell. */
export function textWidthPx(text: string, size: 'small' | 'normal'): number {
  pen ??= document.createElement('canvas').getContext('2d')
  const emPx = Number.parseFloat(getComputedStyle(document.documentElement).fontSize) || 16
  if (pen === null) return text.length * emPx * 0.5
  pen.font = `${size === 'small' ? 400 : 700} ${emPx}px ${getComputedStyle(document.body).fontFamily}`
  return pen.measureText(text).width
}
