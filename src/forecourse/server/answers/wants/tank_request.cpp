#include "forecourse/server/answers/wants/tank_request.h"

#include "forecourse/studies/tank/read_tank_options.h"

namespace forecourse::server {

studies::TankOptions read_tank_want(WantReader& want) {
  const studies::TankAsked asked{want.text("tank"), want.text("depth"), want.text("at"),    want.text("step"),
                                 want.text("rate"), want.text("room"),  want.texts("draws")};
  auto read = studies::read_tank_options(asked, studies::Asker::page);
  if (!read.ok()) want.refuse(read.diagnostics.front().message, read.diagnostics.front().hint);
  return std::move(read.value);
}

}  // namespace forecourse::server
