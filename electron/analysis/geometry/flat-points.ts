/** x and y of points, one after another: drawn ten thousand times over, they are read without an object each. */
export type FlatPoints = Float64Array
