// SPDX-License-Identifier: MIT
#pragma once

#include "tables/care_records.hpp"
#include "tables/coating_records.hpp"
#include "tables/exposure_records.hpp"
#include "tables/fastener_records.hpp"
#include "tables/inch_records.hpp"
#include "tables/isolation_records.hpp"
#include "tables/load_records.hpp"
#include "tables/material_records.hpp"
#include "tables/metal_records.hpp"
#include "tables/price_records.hpp"
#include "tables/table.hpp"

#include <filesystem>
#include <optional>
#include <tuple>

namespace faywright {

/// Every table the program knows. A table is added by adding its record here and its file to data/.
struct Tables {
    std::tuple<Table<Thread>, Table<StandardLength>, Table<Washer>, Table<BoltClass>, Table<Nut>, Table<Finish>, Table<Material>,
               Table<Surface>, Table<SlipFactor>, Table<Embedding>, Table<TighteningMethod>, Table<StockTube>, Table<ServiceClass>,
               Table<LayerMaterial>, Table<LoadRule>, Table<Price>, Table<Metal>, Table<SeriesPotential>, Table<Compatibility>,
               Table<Coating>, Table<Exposure>, Table<Electrolyte>, Table<IsolationElement>, Table<InchThread>, Table<InchGrade>,
               Table<ProductStandard>, Table<LockingNut>, Table<Care>>
        all;

    template <class Record>
    [[nodiscard]] const Table<Record>& of() const {
        return std::get<Table<Record>>(all);
    }

    /// Calls `visit(name, table)` for every table, in order.
    template <class Visit>
    void each(Visit&& visit) const {
        std::apply([&](const auto&... table) { (visit_one(table, visit), ...); }, all);
    }
    template <class Visit>
    void each(Visit&& visit) {
        std::apply([&](auto&... table) { (visit_one(table, visit), ...); }, all);
    }

private:
    template <class Record, class Visit>
    static void visit_one(const Table<Record>& table, Visit&& visit) {
        visit(Record::table, table);
    }
    template <class Record, class Visit>
    static void visit_one(Table<Record>& table, Visit&& visit) {
        visit(Record::table, table);
    }
};

/// The built-in tables, with a shop's own files of the same names laid over them where a folder is given.
/// Whatever is wrong with a file goes to the diagnostics.
[[nodiscard]] Tables load_tables(const std::optional<std::filesystem::path>& overlay, Diagnostics& diagnostics);

}  // namespace faywright
