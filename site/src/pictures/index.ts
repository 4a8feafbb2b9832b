// The pictures, fetched together after the first result.
export { flow, swatch } from './flow';
export { timeline } from './timeline';
export { worth } from './worth';
