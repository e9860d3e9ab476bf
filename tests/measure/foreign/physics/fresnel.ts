/**
 * Part of unpolarised light that is thrown back at a smooth boundary, from inside a denser body; 1 where it is held in.
 *
 * Source: Fresnel's equations, any handbook of optics.
 *
 * @param index refractive index of the body against what is outside, 1 or more
 * @param cosine of the angle to the normal inside, above 0
 *
 * @example fresnelFromInside(1.5, 1) // 0.04
 */
export function fresnelFromInside(index: number, cosine: number): number {
  const sine = index * Math.sqrt(Math.max(0, 1 - cosine * cosine));
  if (sine >= 1) return 1;
  const outside = Math.sqrt(1 - sine * sine);
  const across = (index * cosine - outside) / (index * cosine + outside);
  const along = (index * outside - cosine) / (index * outside + cosine);
  return (across * across + along * along) / 2;
}
