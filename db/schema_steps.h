// The numbered migrations of db/schema, compiled in by embed_schema.cmake.
#pragma once

#include <string>
#include <vector>

namespace hammerline {

struct SchemaStep {
    int version;
    std::string name;
    std::string sql;
};
const std::vector<SchemaStep>& schemaSteps();

} // namespace hammerline
