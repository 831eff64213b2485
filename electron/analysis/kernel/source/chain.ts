/**
 * One node of a field drawn node after node, for `draws` draws at once: at `sum` stands the part that is free, to which the
 * weighted earlier places are added; the result goes to row `own` of the field. A row of the field has `stride` single numbers,
 * of which `field` is the place of the first draw meant; the draws are worked on in pairs, so that one more may be written. A
 * place of number -1 has no weight.
 */
export function drawNode(
  field: usize,
  stride: i32,
  draws: i32,
  before: usize,
  weights: usize,
  size: i32,
  deviation: f64,
  sum: usize,
  own: i32,
): void {
  const end = sum + draws * 8
  const free = f64x2.splat(deviation)
  for (let at = sum; at < end; at += 16) v128.store(at, f64x2.mul(v128.load(at), free))
  for (let slot = 0; slot < size; slot++) {
    const place = load<i32>(before + slot * 4)
    if (place < 0) break
    const weight = v128.load64_splat(weights + slot * 8)
    let from = field + place * stride * 4
    for (let at = sum; at < end; at += 16, from += 8) {
      const earlier = f64x2.promote_low_f32x4(v128.load64_zero(from))
      v128.store(at, f64x2.add(v128.load(at), f64x2.mul(weight, earlier)))
    }
  }
  let to = field + own * stride * 4
  for (let at = sum; at < end; at += 16, to += 8) v128.store64_lane(to, f32x4.demote_f64x2_zero(v128.load(at)), 0)
}
