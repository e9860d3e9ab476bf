/**
 * Renders the photos that the demo book has of baits and chips on the measuring card (`tests/photo/demo/demo-photos.ts`).
 *
 *     npm run bench rendered FOLDER    writes them into a folder
 *
 * Among all benchmarks it does nothing. The values that files of the book have from these photos are then to be written anew
 * (`npx cupbook photo`): `tests/photo/demo/demo-photos.test.ts` compares them.
 */
import { writeDemoPhotos } from '../photo/demo/demo-photos.ts';

const [, folder] = process.argv.slice(2);
if (folder !== undefined) await writeDemoPhotos(folder);
