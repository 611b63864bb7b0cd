/** Stress area of an ISO metric thread, mm2: pi/4 (d - 0.9382 P)^2, d and pitch P in mm (ISO 898-1). */
export const metricStressArea = (diameter: number, pitch: number): number =>
  (Math.PI / 4) * (diameter - 0.9382 * pitch) ** 2;

/** Stress area of a unified inch thread, in2: 0.7854 (d - 0.9743 / n)^2, d in inch, n threads an inch (ASME B1.1). */
export const inchStressArea = (diameter: number, threadsPerInch: number): number =>
  0.7854 * (diameter - 0.9743 / threadsPerInch) ** 2;
