import { pageKind } from '../page-kind.js';

export default pageKind('recipe-card-4x6');
