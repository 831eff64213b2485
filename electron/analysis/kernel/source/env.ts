/** Functions the kernel does not have itself and seldom needs. */
export declare function exp(x: f64): f64
export declare function log(x: f64): f64
