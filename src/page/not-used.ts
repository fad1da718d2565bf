/** Stands in for libraries that a library of ours could load and is never asked to (vite.config.ts). */
export default {};
