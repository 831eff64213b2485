export { drawNode } from './chain'
export { covarianceStrips } from './covariances'
export { nearestPredictions, nodeWeights } from './neighbours'
export { fillNormals } from './normals'
export {
  columnProducts,
  columnSquares,
  dot,
  fromBlocks,
  intoBlocks,
  inverseFromBlocks,
  quadraticForm,
} from './products'
export { factorBlocks, solveStrips } from './triangle'
