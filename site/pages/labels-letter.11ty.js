import { pageKind } from '../page-kind.js';

export default pageKind('labels-letter');
