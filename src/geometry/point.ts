/** Points of the plane, y up, and the few vector steps that everything else is made of. */
import { hypot } from '#maths/hypot.ts';
import { cos, sin } from '#maths/sine.ts';

export interface Point {
  readonly x: number;
  readonly y: number;
}

export function add(a: Point, b: Point): Point {
  return { x: a.x + b.x, y: a.y + b.y };
}

export function subtract(a: Point, b: Point): Point {
  return { x: a.x - b.x, y: a.y - b.y };
}

export function scale(a: Point, factor: number): Point {
  return { x: a.x * factor, y: a.y * factor };
}

export function dot(a: Point, b: Point): number {
  return a.x * b.x + a.y * b.y;
}

/** Positive when `b` turns left of `a`. */
export function cross(a: Point, b: Point): number {
  return a.x * b.y - a.y * b.x;
}

export function distance(a: Point, b: Point): number {
  return hypot(b.x - a.x, b.y - a.y);
}

/** `a` turned a quarter to the left. */
export function turnLeft(a: Point): Point {
  return { x: -a.y, y: a.x };
}

/** The point of a circle at an angle in radians. */
export function pointOnCircle(center: Point, radius: number, angle: number): Point {
  return { x: center.x + radius * cos(angle), y: center.y + radius * sin(angle) };
}
