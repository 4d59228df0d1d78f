/** Samples by a formula of their index. Several times quicker than `Float32Array.from` with a function. */
export function filled(length: number, sampleAt: (index: number) => number): Float32Array {
  const samples = new Float32Array(length)
  for (let i = 0; i < length; i++) samples[i] = sampleAt(i)
  return samples
}
