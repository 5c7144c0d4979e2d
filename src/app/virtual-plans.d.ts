/** A plan with every field filled in, checked by the build; see `src/dev/ready-plans.ts`. */
declare module 'virtual:plan/*' {
  const plan: import('../engine/plan/schema.ts').Plan;
  export default plan;
}

/** Mark of the program that checked them; null unless the page is built. */
declare module 'virtual:mark' {
  const mark: string | null;
  export default mark;
}
