export const stencils = {
  title: 'Stencils',
};
