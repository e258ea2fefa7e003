// Package resolve lays a scene out in metres, pass by pass: rooms and their walls, what stands in them, people,
// cameras, lights, grip, meters.
package resolve
