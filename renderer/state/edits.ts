/** Changes to single parts of the project, for `edit`. */
import type { Explain, ExplainPart, Method, Project } from '../../sim/project/document';

type Section = 'piece' | 'stock' | 'limits' | 'costs' | 'run';
export type MethodSection = 'tilt' | 'guide' | 'width' | 'blade' | 'assembly' | 'test' | 'minutes';

/** Keys of `patch` that are undefined are taken out of the section. */
function patched<Part extends object>(part: Part, patch: { [Key in keyof Part]?: Part[Key] | undefined }): Part {
  const next = { ...part, ...patch };
  for (const key of Object.keys(patch) as (keyof Part)[]) if (patch[key] === undefined) delete next[key];
  return next as Part;
}

export function withSection<Name extends Section>(
  name: Name,
  patch: { [Key in keyof Project[Name]]?: Project[Name][Key] | undefined },
): (project: Project) => Project {
  return (project) => ({ ...project, [name]: patched(project[name], patch) });
}

export function withMethod(index: number, change: (method: Method) => Method): (project: Project) => Project {
  return (project) => ({
    ...project,
    methods: project.methods.map((method, i) => (i === index ? change(method) : method)),
  });
}

/** One figure of a method, by the key it has in its section; undefined takes the key out. */
export function withFigure(
  index: number,
  section: MethodSection,
  key: string,
  value: number | string | null | undefined,
): (project: Project) => Project {
  return withMethod(index, (method) => ({ ...method, [section]: patched(method[section], { [key]: value }) }));
}

/** The method moved `by` places; the same project when it is at the end already. */
export function withMethodMoved(index: number, by: -1 | 1): (project: Project) => Project {
  return (project) => {
    const methods = [...project.methods];
    const [moved] = methods.splice(index, 1);
    const place = index + by;
    if (!moved || place < 0 || place > methods.length) return project;
    methods.splice(place, 0, moved);
    return { ...project, methods };
  };
}

/** The sheets stay with the method that goes by another name now. */
export function withMethodRenamed(index: number, name: string): (project: Project) => Project {
  return (project) => {
    const renamed = withMethod(index, (method) => ({ ...method, name }))(project);
    return project.explain?.method === project.methods[index]?.name ? withExplain({ method: name })(renamed) : renamed;
  };
}

/** Sheets about the method that goes are about the best one again. */
export function withoutMethod(index: number): (project: Project) => Project {
  return (project) => {
    if (project.methods.length === 1) return project;
    const left = { ...project, methods: project.methods.filter((_, i) => i !== index) };
    const isExplained = project.explain?.method === project.methods[index]?.name;
    return isExplained ? withExplain({ method: undefined })(left) : left;
  };
}

type ExplainPatch = { [Key in keyof Explain]?: Explain[Key] | undefined };

/** The words for the sheets; empty ones leave no trace in the document. */
export function withExplain(patch: ExplainPatch): (project: Project) => Project {
  return (project) => {
    const { explain: before = {}, ...rest } = project;
    const explain = patched<Explain>(before, patch);
    return Object.keys(explain).length > 0 ? { ...rest, explain } : rest;
  };
}

export function withShown(part: ExplainPart, isShown: boolean): (project: Project) => Project {
  return (project) => {
    const show = patched(project.explain?.show ?? {}, { [part]: isShown ? undefined : false });
    return withExplain({ show: Object.keys(show).length > 0 ? show : undefined })(project);
  };
}

/** A copy right after the original, under a name of its own. */
export function withMethodCopied(index: number): (project: Project) => Project {
  return (project) => {
    const original = project.methods[index];
    if (!original) return project;
    const copy = { ...original, name: freeName(project, original.name) };
    return { ...project, methods: project.methods.toSpliced(index + 1, 0, copy) };
  };
}

export function withMethodAdded(method: Method): (project: Project) => Project {
  return (project) => ({
    ...project,
    methods: [...project.methods, { ...method, name: freeName(project, method.name) }],
  });
}

/** `name`, or with the first number after it that no method has yet. */
export function freeName(project: Project, name: string): string {
  const taken = new Set(project.methods.map((method) => method.name));
  if (!taken.has(name)) return name;
  const stem = name.replace(/ \d+$/, '');
  let number = 2;
  while (taken.has(`${stem} ${number}`)) number++;
  return `${stem} ${number}`;
}
