// Stands in for the sources of a room that holds headers only, or nothing yet.
namespace dewgap {}
