import { averagePhotos } from '../../../src/photo/average-photos.ts';
import { measurePhoto } from '../../../src/photo/measure-photo.ts';
import type { PhotoMeasured, PhotoRefused } from '../../../src/photo/photo-measured.ts';
import { printedCard } from '../../photo/simulated/printed-card.ts';
import { type SimulatedPhoto, takePhoto } from '../../photo/simulated/simulated-photo.ts';
import { certifiedValues, measuredPhoto, outcomeOf, ruledValues } from './measured-photo.ts';
import type { Job } from './options.ts';
import type { PhotoResult } from './photo-result.ts';

/** Results of a job: of a photo; or of three photos of one bait, the first by itself and all of them averaged. */
export async function runJob({ set, seed }: Job): Promise<readonly PhotoResult[]> {
  if (set === 'three') return threeOf(seed);
  const start = process.cpuUsage();
  const photo = await takePhoto(set, await printedCard(), seed);
  const { user, system } = process.cpuUsage(start);
  return [measuredPhoto(photo, { set, seed, bait: seed, taken: (user + system) / 1e6 })];
}

/** Other light, pose and exposure each time; the same bait, print and phone. */
async function threeOf(bait: number): Promise<readonly PhotoResult[]> {
  const photos: SimulatedPhoto[] = [];
  for (const which of [0, 1, 2])
    photos.push(await takePhoto('b2', await printedCard(), { bait, photo: 10_000 + 3 * bait + which }));
  const [first] = photos;
  if (!first) return [];
  const one = measuredPhoto(first, { set: 'one of three', seed: bait, bait, taken: 0 });
  const averaged = (values: typeof ruledValues) => {
    const measured = photos.map(({ pixels, truth }) => measurePhoto(pixels, values(truth)));
    const sound = measured.filter((each): each is PhotoMeasured => each.kind === 'measured');
    const all: PhotoMeasured | PhotoRefused | undefined = sound.length === 3 ? averagePhotos(sound) : undefined;
    return all ? outcomeOf(all, first.truth) : { refused: 'one of them' };
  };
  return [one, { ...one, set: 'three', anyCard: averaged(ruledValues), certified: averaged(certifiedValues) }];
}
